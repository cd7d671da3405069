using FindingRules.Model.Explanations;
using FindingRules.Model.Quantities;
using FindingRules.Model.Text;

namespace FindingRules.Engine.Explaining;

/// <summary>Numbers and places as an explanation names them.</summary>
internal static class Shown
{
    public static FilePlace Place(Location at)
    {
        var (start, end) = (at.Start, at.Source.PositionOf(at.Span.End));
        return new FilePlace(at.Source.Path, start.Line, start.Column, end.Line, end.Column);
    }

    public static string Interval(Interval interval, Unit unit)
    {
        string Of(Rational value) => Quantity.FromBase(value, unit).ToString();
        return (interval.Low, interval.High) switch
        {
            ({ } low, { } high) when low == high => Of(low),
            ({ } low, { } high) =>
                $"{(interval.LowClosed ? "" : "more than ")}{Of(low)} to {(interval.HighClosed ? "" : "below ")}{Of(high)}",
            ({ } low, null) => $"{(interval.LowClosed ? "at least" : "more than")} {Of(low)}",
            (null, { } high) => $"{(interval.HighClosed ? "at most" : "below")} {Of(high)}",
            _ => "any value",
        };
    }

    /// <summary>The exact fraction of one number that has to be rounded for showing.</summary>
    public static string? Exact(Interval interval, Unit unit)
    {
        if (interval is not { IsPoint: true, Low: { } value }) return null;
        var number = value / unit.InBase;
        number.ToDecimalText(out var isExact, places: 2);
        return isExact ? null : $"{number.Numerator}/{number.Denominator} {unit.Name}";
    }
}
