using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Quantities;

namespace FindingRules.Packs.Binding.Scales;

/// <summary>Bands must cover all values, in order, each value once.</summary>
internal static class BandChecks
{
    public static bool AreSound(string scale, List<WrittenBand> bands, MessageBag messages)
    {
        var before = messages.Count;
        for (var i = 1; i < bands.Count; i++)
            if (IsBelow(bands[i].Band.Range, bands[i - 1].Band.Range))
                messages.Add(LinkMessages.BandsOutOfOrder(bands[i].At, bands[i].Band.Value, bands[i - 1].Band.Value));
        if (messages.Count > before) return false;
        for (var i = 1; i < bands.Count; i++)
            if (CheckPair(scale, bands[i - 1], bands[i]) is { } message)
                messages.Add(message);
        if (messages.Count > before) return false;
        if (bands[0].Band.Range.Low is not null)
            messages.Add(LinkMessages.BandEnd(bands[0].At, scale, bands[0].Band.Value, isFirst: true));
        if (bands[^1].Band.Range.High is not null)
            messages.Add(LinkMessages.BandEnd(bands[^1].At, scale, bands[^1].Band.Value, isFirst: false));
        return messages.Count == before;
    }

    private static Message? CheckPair(string scale, WrittenBand before, WrittenBand after)
    {
        var (a, b) = (before.Band.Range, after.Band.Range);
        var shared = a.Intersect(b);
        if (!shared.IsEmpty)
            return LinkMessages.BandOverlap(after.At, scale, before.Band.Value, after.Band.Value, Show(shared, after.Unit));
        // INVARIANT: they are apart and in order, so both ends between them are there.
        var (end, start) = (a.High!.Value, b.Low!.Value);
        if (end == start && (a.HighClosed || b.LowClosed)) return null;
        var gap = new Interval(end, !a.HighClosed, start, !b.LowClosed);
        return LinkMessages.BandGap(after.At, scale, before.Band.Value, after.Band.Value, Show(gap, after.Unit));
    }

    private static bool IsBelow(Interval x, Interval y) =>
        x.High is { } high && y.Low is { } low && (high < low || (high == low && !(x.HighClosed && y.LowClosed)));

    private static string Show(Interval interval, Unit unit)
    {
        if (interval.IsPoint) return Quantity.FromBase(interval.Low!.Value, unit).ToString();
        var low = interval.Low is { } l ? $"{(interval.LowClosed ? "from" : "above")} {Quantity.FromBase(l, unit)}" : null;
        var high = interval.High is { } h ? $"{(interval.HighClosed ? "at most" : "below")} {Quantity.FromBase(h, unit)}" : null;
        return low is null || high is null ? $"all values {low ?? high}".TrimEnd() : $"values {low} to {high}";
    }
}
