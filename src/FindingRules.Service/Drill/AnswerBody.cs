using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;

namespace FindingRules.Service.Drill;

/// <summary>An answer as it is sent. It has no place for who answers.</summary>
internal sealed record AnswerBody(string Question, int Choice, ImmutableArray<string>? Deciding)
{
    private const int MostDeciding = 200;

    private static readonly JsonSerializerOptions Form = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };

    private sealed record Sent(string Question, int Choice)
    {
        public string[]? Deciding { get; init; }
    }

    public static AnswerBody? Read(SourceText text, MessageBag messages)
    {
        try
        {
            if (JsonSerializer.Deserialize<Sent>(text.Content, Form) is not { } sent) return Wrong("it is empty", text, messages);
            if (sent.Deciding is { } deciding && (deciding.Length > MostDeciding || Array.Exists(deciding, d => d is null)))
                return Wrong($"`deciding` is not a list of at most {MostDeciding} words", text, messages);
            return new AnswerBody(sent.Question, sent.Choice, sent.Deciding is null ? null : [.. sent.Deciding]);
        }
        catch (JsonException)
        {
            return Wrong("a member is missing, unknown or of another kind, or it is not JSON", text, messages);
        }
    }

    private static AnswerBody? Wrong(string why, SourceText text, MessageBag messages)
    {
        messages.Add(DrillMessages.AnswerForm(new SourceText(text.Path, "").Whole, why));
        return null;
    }
}
