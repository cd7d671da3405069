namespace FindingRules.Model.Quantities;

/// <summary>
/// The product of two intervals: the least and the greatest of the four products of their ends, an end without limit
/// counting as infinite and zero times infinite as zero. Source: Hickey, Ju, van Emden, "Interval arithmetic: from
/// principles to implementation", J ACM 2001;48:1038-1068 (table of cases, from memory).
/// </summary>
internal static class IntervalProduct
{
    public static Interval Of(Interval a, Interval b)
    {
        Span<End> ends =
        [
            Times(LowOf(a), LowOf(b)), Times(LowOf(a), HighOf(b)), Times(HighOf(a), LowOf(b)), Times(HighOf(a), HighOf(b)),
        ];
        var (low, high) = (ends[0], ends[0]);
        foreach (var end in ends[1..])
        {
            low = Pick(low, end, lower: true);
            high = Pick(high, end, lower: false);
        }
        return new Interval(
            low.Infinite == 0 ? low.Value : null, low.Infinite == 0 && low.Closed,
            high.Infinite == 0 ? high.Value : null, high.Infinite == 0 && high.Closed);
    }

    private readonly record struct End(Rational Value, int Infinite, bool Closed)
    {
        public int Sign => Infinite != 0 ? Infinite : Value.Sign;
    }

    private static End LowOf(Interval i) => i.Low is { } low ? new(low, 0, i.LowClosed) : new(default, -1, false);

    private static End HighOf(Interval i) => i.High is { } high ? new(high, 0, i.HighClosed) : new(default, 1, false);

    private static End Times(End x, End y)
    {
        // A zero that is reached makes the product zero and reached, whatever the other end is.
        if (x.Sign == 0 || y.Sign == 0)
            return new(default, 0, (x.Sign == 0 && x.Closed) || (y.Sign == 0 && y.Closed));
        if (x.Infinite != 0 || y.Infinite != 0) return new(default, x.Sign * y.Sign, false);
        return new(x.Value * y.Value, 0, x.Closed && y.Closed);
    }

    private static End Pick(End x, End y, bool lower)
    {
        var order = x.Infinite != y.Infinite ? x.Infinite.CompareTo(y.Infinite) : x.Infinite != 0 ? 0 : x.Value.CompareTo(y.Value);
        if (order == 0) return x with { Closed = x.Closed || y.Closed };
        return order < 0 == lower ? x : y;
    }
}
