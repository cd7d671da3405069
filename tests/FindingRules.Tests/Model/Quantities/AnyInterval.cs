using CsCheck;
using FindingRules.Model.Quantities;

namespace FindingRules.Tests.Model.Quantities;

/// <summary>Random intervals that hold at least one value, around and across zero, and points in them to try.</summary>
internal static class AnyInterval
{
    public static readonly Rational Tiny = new(1, 1_000_000);
    public static readonly Rational Huge = 1_000_000;

    public static readonly Gen<Interval> Gen =
        CsCheck.Gen.Select(End(), CsCheck.Gen.Bool, End(), CsCheck.Gen.Bool)
            .Select(ends => Ordered(ends.Item1, ends.Item2, ends.Item3, ends.Item4));

    /// <summary>The ends that belong to it, values close to those that do not, and some between or far out.</summary>
    public static IReadOnlyList<Rational> PointsOf(Interval interval)
    {
        var low = interval.Low ?? (interval.High ?? 0) - Huge;
        var high = interval.High ?? (interval.Low ?? 0) + Huge;
        Rational[] candidates = [low, low + Tiny, (low + high) / 2, ((low * 3) + high) / 4, -Tiny, 0, Tiny, 1, -1, high - Tiny, high];
        return [.. candidates.Where(interval.Contains)];
    }

    private static Gen<int?> End() => CsCheck.Gen.Frequency(
        (6, CsCheck.Gen.Int[-4, 4].Select(i => (int?)i)), (1, CsCheck.Gen.Const((int?)null)));

    private static Interval Ordered(int? a, bool aClosed, int? b, bool bClosed)
    {
        var (low, high) = a > b ? (b, a) : (a, b);
        if (low is not null && low == high) return Interval.Point(low.Value);
        return new Interval(low, low is not null && aClosed, high, high is not null && bClosed);
    }
}
