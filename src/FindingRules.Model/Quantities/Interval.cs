using FindingRules.Model.Truths;

namespace FindingRules.Model.Quantities;

/// <summary>
/// All the values that a measure may have, in base units: an exact value is an interval of one point, a bound such as
/// <c>&lt;2 mm</c> one with an open end. An end that is null is without limit. Dense: between two values lies another.
/// </summary>
public readonly record struct Interval(Rational? Low, bool LowClosed, Rational? High, bool HighClosed)
{
    public static Interval Point(Rational value) => new(value, true, value, true);

    public static Interval Closed(Rational low, Rational high) => new(low, true, high, true);

    public static Interval Unlimited => new(null, false, null, false);

    public bool IsPoint => LowClosed && HighClosed && Low is { } low && High is { } high && low == high;

    public bool IsEmpty => Low is { } low && High is { } high && (low > high || (low == high && !(LowClosed && HighClosed)));

    public bool Contains(Rational value) =>
        (Low is not { } low || value > low || (LowClosed && value == low))
        && (High is not { } high || value < high || (HighClosed && value == high));

    public bool Contains(Interval other) => !other.IsEmpty && Intersect(other) == other;

    public Interval Intersect(Interval other)
    {
        var (low, lowClosed) = HigherLow(this, other);
        var (high, highClosed) = LowerHigh(this, other);
        return new Interval(low, lowClosed, high, highClosed);
    }

    /// <summary>Widened on both sides by the precision of the measurement; the new ends belong to it.</summary>
    public Interval Widen(Rational by) => by.IsZero ? this : new(Low - by, Low is not null, High + by, High is not null);

    public static Interval operator +(Interval a, Interval b) =>
        new(a.Low + b.Low, a.LowClosed && b.LowClosed, a.High + b.High, a.HighClosed && b.HighClosed);

    public static Interval operator -(Interval a) => new(-a.High, a.HighClosed, -a.Low, a.LowClosed);

    public static Interval operator -(Interval a, Interval b) => a + -b;

    public static Interval operator *(Interval a, Interval b) => IntervalProduct.Of(a, b);

    /// <summary>The quotient, or null where the divisor may be zero: then nothing is known of it.</summary>
    public static Interval? Divide(Interval a, Interval b) =>
        b.Contains(Rational.Zero) || b.IsEmpty ? null : a * Reciprocal(b);

    public Truth Below(Interval other) => Compare(this, other, strictly: true);

    public Truth AtMost(Interval other) => Compare(this, other, strictly: false);

    public Truth EqualTo(Interval other)
    {
        if (IsPoint && other.IsPoint) return Kleene.Of(Low == other.Low);
        return Intersect(other).IsEmpty ? Truth.False : Truth.Unknown;
    }

    private static Truth Compare(Interval a, Interval b, bool strictly)
    {
        if (a.High is { } aHigh && b.Low is { } bLow
            && (aHigh < bLow || (aHigh == bLow && (!strictly || !a.HighClosed || !b.LowClosed))))
            return Truth.True;
        if (a.Low is { } aLow && b.High is { } bHigh
            && (aLow > bHigh || (aLow == bHigh && (strictly || !a.LowClosed || !b.HighClosed))))
            return Truth.False;
        return Truth.Unknown;
    }

    // INVARIANT: zero is not inside, so both ends have one sign or are zero and open.
    private static Interval Reciprocal(Interval b)
    {
        Rational? low = b.High is { } high ? high.IsZero ? null : Rational.One / high : Rational.Zero;
        Rational? newHigh = b.Low is { } bLow ? bLow.IsZero ? null : Rational.One / bLow : Rational.Zero;
        var isLowClosed = low is not null && b.High is not null && b.HighClosed;
        return new Interval(low, isLowClosed, newHigh, newHigh is not null && b.Low is not null && b.LowClosed);
    }

    private static (Rational?, bool) HigherLow(Interval a, Interval b) => (a.Low, b.Low) switch
    {
        (null, _) => (b.Low, b.LowClosed),
        (_, null) => (a.Low, a.LowClosed),
        ({ } x, { } y) when x == y => (x, a.LowClosed && b.LowClosed),
        ({ } x, { } y) => x > y ? (x, a.LowClosed) : (y, b.LowClosed),
    };

    private static (Rational?, bool) LowerHigh(Interval a, Interval b) => (a.High, b.High) switch
    {
        (null, _) => (b.High, b.HighClosed),
        (_, null) => (a.High, a.HighClosed),
        ({ } x, { } y) when x == y => (x, a.HighClosed && b.HighClosed),
        ({ } x, { } y) => x < y ? (x, a.HighClosed) : (y, b.HighClosed),
    };
}
