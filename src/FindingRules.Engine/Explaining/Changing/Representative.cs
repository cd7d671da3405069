using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Explaining.Changing;

/// <summary>The value of a stretch that a person would name: near to what was sent, and with few digits.</summary>
internal static class Representative
{
    /// <summary>Null where nothing that a study could send lies inside: no whole year between two years, no end to a third.</summary>
    public static Rational? Of(Interval piece, MeasureType type, MeasuredValue? now)
    {
        var wanted = Wanted(piece, type, now);
        foreach (var step in Steps(type, now?.Unit ?? type.Unit))
            if (Nearest(piece, wanted, step, type, now) is { } found && CanBeSent(found, now?.Unit ?? type.Unit))
                return found;
        return null;
    }

    /// <summary>No finer than it can be measured, where that is enough.</summary>
    private static IEnumerable<Rational> Steps(MeasureType type, Unit unit) => type switch
    {
        { IsWhole: true } => [type.Unit.InBase],
        { Precision.IsZero: false } => [type.Precision, unit.InBase / 10, unit.InBase / 100, unit.InBase / 10_000],
        _ => [unit.InBase / 10, unit.InBase / 100, unit.InBase / 10_000],
    };

    private static Rational Wanted(Interval piece, MeasureType type, MeasuredValue? now)
    {
        var near = now?.Interval ?? type.Normal ?? piece;
        var middle = (near.Low, near.High) switch
        {
            ({ } low, { } high) => (low + high) / 2,
            ({ } low, null) => low,
            (null, { } high) => high,
            _ => Rational.Zero,
        };
        // Of a finding that was not sent, the end that a threshold gives says most.
        return now is null && type.Normal is null ? End(piece, type) ?? middle : middle;
    }

    /// <summary>Where it borders on other values, and not where values end to be plausible.</summary>
    private static Rational? End(Interval piece, MeasureType type) =>
        piece.Low is { } low && low != type.Plausible.Low ? low
        : piece.High is { } high && high != type.Plausible.High ? high
        : piece.Low ?? piece.High;

    private static Rational? Nearest(Interval piece, Rational wanted, Rational step, MeasureType type, MeasuredValue? now)
    {
        if (piece.Contains(wanted) && IsMultiple(wanted, step)) return wanted;
        bool IsFit(Rational end, Rational by) => type.IsWhole ? IsMultiple(end, by) : IsShort(end, now?.Unit ?? type.Unit);
        if (piece.Low is { } low && wanted <= low)
        {
            if (piece.LowClosed && IsFit(low, step)) return low;
            var next = (Floor(low / step) + 1) * step;
            return piece.Contains(next) ? next : null;
        }
        if (piece.High is { } high && wanted >= high)
        {
            if (piece.HighClosed && IsFit(high, step)) return high;
            var before = (Ceiling(high / step) - 1) * step;
            return piece.Contains(before) ? before : null;
        }
        var below = Floor(wanted / step) * step;
        return piece.Contains(below) ? below : piece.Contains(below + step) ? below + step : null;
    }

    private static bool IsMultiple(Rational value, Rational step) => (value / step).Denominator.IsOne;

    private static bool CanBeSent(Rational value, Unit unit)
    {
        Quantity.FromBase(value, unit).Number.ToDecimalText(out var isExact);
        return isExact;
    }

    /// <summary>A threshold as somebody wrote it, and not one that was worked out and never ends.</summary>
    private static bool IsShort(Rational value, Unit unit) => (value / unit.InBase * 1000).Denominator.IsOne;

    private static Rational Floor(Rational value)
    {
        var quotient = System.Numerics.BigInteger.DivRem(value.Numerator, value.Denominator, out var rest);
        return new Rational(rest.Sign < 0 ? quotient - 1 : quotient, 1);
    }

    private static Rational Ceiling(Rational value) => -Floor(-value);
}
