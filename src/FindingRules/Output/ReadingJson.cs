using System.Buffers;
using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Rendering;
using FindingRules.Model.Readings;

namespace FindingRules.Output;

/// <summary>
/// A reading as JSON. The members are those of <see cref="Reading"/> in their order, in camel case; lists are always
/// there, and what has no value is left out. The same reading is the same bytes.
/// </summary>
public static class ReadingJson
{
    private static readonly JsonWriterOptions Compact = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly JsonWriterOptions Pretty = Compact with { Indented = true, NewLine = "\n" };

    public static ReadOnlyMemory<byte> ToBytes(Reading reading, bool isPretty = false) =>
        Written(to => Write(to, reading), isPretty);

    /// <summary>On one line, without its end.</summary>
    public static void Write(IBufferWriter<byte> bytes, Reading reading)
    {
        using var to = new Utf8JsonWriter(bytes, Compact);
        Write(to, reading);
    }

    /// <summary>On one line, without its end.</summary>
    public static void Write(IBufferWriter<byte> bytes, NoReading none)
    {
        using var to = new Utf8JsonWriter(bytes, Compact);
        Write(to, none);
    }

    /// <summary>
    /// What stands where a reading would: <c>{noReading, study?, source, line, messages}</c>. It says in words that there
    /// is none, so that nobody takes the gap for a study without suggestions.
    /// </summary>
    public static ReadOnlyMemory<byte> NoReadingToBytes(NoReading none, bool isPretty = false) =>
        Written(to => Write(to, none), isPretty);

    private static void Write(Utf8JsonWriter to, NoReading none)
    {
        to.WriteStartObject();
        to.WriteString("noReading"u8, none.Why);
        to.WriteString("source"u8, Printable.WellFormed(none.Source));
        if (none.Line is { } line) to.WriteNumber("line"u8, line);
        to.WritePropertyName("messages"u8);
        MessageJson.Write(to, none.Messages);
        to.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter to, Reading reading)
    {
        to.WriteStartObject();
        WritePack(to, reading.Pack);
        to.WriteString("engine"u8, reading.Engine);
        to.WriteString("study"u8, reading.Study);
        to.WriteOptional("supersedes"u8, reading.Supersedes);
        to.WriteList("suggestions"u8, reading.Suggestions, SuggestionJson.Write);
        to.WriteOptional("calm"u8, reading.Calm);
        to.WriteList("nextSteps"u8, reading.NextSteps, SuggestionJson.Write);
        to.WriteList("cautions"u8, reading.Cautions, SuggestionJson.Write);
        to.WriteList("probabilities"u8, reading.Probabilities, SuggestionJson.Write);
        to.WriteList("held"u8, reading.Held, WithheldJson.Write);
        to.WriteList("conflicts"u8, reading.Conflicts, WithheldJson.Write);
        to.WriteList("unknown"u8, reading.Unknown, WithheldJson.Write);
        to.WriteList("borderline"u8, reading.Borderline, WithheldJson.Write);
        to.WriteList("askNext"u8, reading.AskNext, WithheldJson.Write);
        to.WriteList("notAssessed"u8, reading.NotAssessed, WithheldJson.Write);
        to.WriteStrings("notes"u8, reading.Notes);
        to.WriteString("impressionText"u8, reading.ImpressionText);
        to.WriteString("notice"u8, reading.Notice);
        to.WriteEndObject();
    }

    private static void WritePack(Utf8JsonWriter to, PackIdentity pack)
    {
        to.WriteStartObject("pack"u8);
        to.WriteString("name"u8, pack.Name);
        to.WriteString("version"u8, pack.Version);
        to.WriteString("meaningDigest"u8, pack.MeaningDigest);
        to.WriteString("textDigest"u8, pack.TextDigest);
        to.WriteBoolean("isDemonstration"u8, pack.IsDemonstration);
        to.WriteEndObject();
    }

    private static ReadOnlyMemory<byte> Written(Action<Utf8JsonWriter> write, bool isPretty)
    {
        using var bytes = new PooledBytes();
        using (var to = new Utf8JsonWriter(bytes, isPretty ? Pretty : Compact)) write(to);
        return bytes.ToArray();
    }
}

/// <summary>A study that could not be read.</summary>
/// <param name="Why">Such as <c>the study has 2 errors</c>.</param>
/// <param name="Source">The file it came from, or <c>standard input</c>.</param>
/// <param name="Line">Its line, where there is a study a line.</param>
public sealed record NoReading(string Why, string Source, int? Line, ImmutableArray<Message> Messages);
