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

    public static string Interval(Interval interval, Unit unit) =>
        Interval(interval, value => Quantity.FromBase(value, unit).ToString());

    /// <summary>Such as 55 %, 2 mm to 3 mm, below 2 mm.</summary>
    public static string Interval(Interval interval, Func<Rational, string> show) =>
        (interval.Low, interval.High) switch
        {
            ({ } low, { } high) when low == high => show(low),
            ({ } low, { } high) =>
                $"{(interval.LowClosed ? "" : "more than ")}{show(low)} to {(interval.HighClosed ? "" : "below ")}{show(high)}",
            ({ } low, null) => $"{(interval.LowClosed ? "at least" : "more than")} {show(low)}",
            (null, { } high) => $"{(interval.HighClosed ? "at most" : "below")} {show(high)}",
            _ => "any value",
        };

    /// <summary>The exact fraction of one number that has to be rounded for showing.</summary>
    public static string? Exact(Interval interval, Unit unit)
    {
        if (interval is not { IsPoint: true, Low: { } value }) return null;
        var number = value / unit.InBase;
        number.ToDecimalText(out var isExact, places: 2);
        return isExact ? null : $"{number.Numerator}/{number.Denominator} {unit.Name}";
    }
}
