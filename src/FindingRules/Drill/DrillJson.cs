using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using FindingRules.Model.Readings;

namespace FindingRules.Drill;

/// <summary>Questions of one seed; in an export with the answers, apart from them.</summary>
/// <param name="Answers">Null where they are not to be given away.</param>
public sealed record DrillSheet(
    string Notice, PackIdentity Pack, ulong Seed, ImmutableArray<DrillQuestion> Questions, ImmutableArray<DrillAnswer>? Answers)
{
    public static DrillSheet Of(DrillDeck deck, ulong seed, int count, bool hasAnswers)
    {
        var questions = deck.Draw(seed, count);
        return new DrillSheet(
            deck.Notice, deck.Identity, seed, questions,
            hasAnswers ? [.. questions.Select(q => deck.Answer(q.Id)!)] : null);
    }
}

/// <summary>Questions and judgements as JSON, in the form of <c>schemas/drill.schema.json</c>.</summary>
public static class DrillJson
{
    private static readonly JsonSerializerOptions Compact = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        IgnoreReadOnlyProperties = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower) },
        NewLine = "\n",
    };

    private static readonly JsonSerializerOptions Pretty = new(Compact) { WriteIndented = true };

    public static byte[] ToBytes(DrillSheet sheet, bool isPretty = false) =>
        JsonSerializer.SerializeToUtf8Bytes(sheet, isPretty ? Pretty : Compact);

    public static byte[] ToBytes(DrillJudgement judgement) => JsonSerializer.SerializeToUtf8Bytes(judgement, Compact);
}
