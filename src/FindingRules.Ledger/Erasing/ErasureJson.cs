using System.Text.Json;
using FindingRules.Ledger.Canonical;

namespace FindingRules.Ledger.Erasing;

/// <summary>What an erasure record says: why, and which records by their place in the tree, as ranges from the first
/// to the last.</summary>
internal static class ErasureJson
{
    public static byte[] Write(string reason, IEnumerable<PositionRange> ranges)
    {
        var to = new CanonicalBuffer();
        var separator = (byte)'{';
        to.Member(ref separator, "reason");
        to.Text(reason);
        to.Member(ref separator, "records");
        var inner = (byte)'[';
        foreach (var range in ranges)
        {
            to.Raw(inner);
            to.Ascii($"[{range.First},{range.Last}]");
            inner = (byte)',';
        }
        to.Ascii(inner == '[' ? "[]}" : "]}");
        return to.ToArray();
    }

    /// <exception cref="InvalidDataException">It does not say which records.</exception>
    public static IReadOnlyList<PositionRange> Read(ReadOnlyMemory<byte> json)
    {
        try
        {
            using var document = JsonDocument.Parse(json);
            return [.. document.RootElement.GetProperty("records").EnumerateArray()
                .Select(r => new PositionRange(r[0].GetInt64(), r[1].GetInt64()))];
        }
        catch (Exception e) when (
            e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or IndexOutOfRangeException)
        {
            throw new InvalidDataException("The erasure does not say which records.", e);
        }
    }
}

/// <summary>Positions from the first to the last, both included.</summary>
internal readonly record struct PositionRange(long First, long Last)
{
    public long Count => Last - First + 1;

    /// <summary>Positions in order, drawn together where they follow each other.</summary>
    public static List<PositionRange> Of(IEnumerable<long> sorted)
    {
        var ranges = new List<PositionRange>();
        foreach (var position in sorted)
            if (ranges.Count > 0 && ranges[^1].Last + 1 == position) ranges[^1] = ranges[^1] with { Last = position };
            else ranges.Add(new PositionRange(position, position));
        return ranges;
    }
}
