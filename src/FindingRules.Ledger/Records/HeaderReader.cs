using System.Globalization;
using System.Text.Json;
using FindingRules.Ledger.Correlation;

namespace FindingRules.Ledger.Records;

/// <summary>Reads what <see cref="RecordHeader.ToBytes"/> wrote, and only that.</summary>
internal static class HeaderReader
{
    /// <exception cref="InvalidDataException">The bytes are not those of a header.</exception>
    public static RecordHeader Read(ReadOnlyMemory<byte> bytes, long record)
    {
        try
        {
            return Read(bytes);
        }
        catch (InvalidDataException e)
        {
            throw new InvalidDataException($"record {record} is not in the form in which records are written", e);
        }
    }

    /// <exception cref="InvalidDataException">The bytes are not those of a header.</exception>
    public static RecordHeader Read(ReadOnlyMemory<byte> bytes)
    {
        try
        {
            using var document = JsonDocument.Parse(bytes);
            var root = document.RootElement;
            if (root.GetProperty("v").GetInt32() != RecordHeader.Version) throw new InvalidDataException(
                "The header is of another version.");
            return Read(root);
        }
        catch (Exception e) when (
            e is JsonException or KeyNotFoundException or FormatException or InvalidOperationException or ArgumentException)
        {
            throw new InvalidDataException("The bytes are not those of a header.", e);
        }
    }

    private static RecordHeader Read(JsonElement root) => new()
    {
        Id = root.GetProperty("id").GetGuid(),
        Time = DateTimeOffset.ParseExact(
            Text(root, "time"), RecordHeader.TimeFormat, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal),
        Kind = ReadKind(Text(root, "kind")),
        Actor = Text(root, "actor"),
        Commitment = Convert.FromHexString(Text(root, "commitment")),
        Engine = Optional(root, "engine"),
        About = root.TryGetProperty("about", out var about) ? about.GetGuid() : null,
        Pack = root.TryGetProperty("pack", out var pack)
            ? new PackReference(Text(pack, "name"), Text(pack, "version"), Text(pack, "meaning"), Text(pack, "text"))
            : null,
        Correlation = Optional(root, "traceparent") is { } parent
            ? TraceContext.Read([parent], Optional(root, "tracestate") is { } state ? [state] : [])
            : null,
    };

    private static RecordKind ReadKind(string word)
    {
        foreach (var kind in Enum.GetValues<RecordKind>())
            if (RecordHeader.KindWord(kind) == word)
                return kind;
        throw new FormatException("There is no such kind of record.");
    }

    private static string Text(JsonElement of, string name) => of.GetProperty(name).GetString()!;

    private static string? Optional(JsonElement of, string name) => of.TryGetProperty(name, out var value) ? value.GetString() : null;
}
