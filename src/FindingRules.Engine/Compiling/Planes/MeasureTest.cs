using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Compiling.Planes;

/// <summary>
/// The line of a measure's values, cut at every number that some rule compares it with: each number is a cell, and so
/// is each gap. Every statement about the measure is settled within a cell.
/// </summary>
internal sealed class MeasureTest : FindingTest
{
    // Numerator, denominator and quotient are each rounded once, by less than 2^-52 of their size.
    private const double Doubt = 1e-14;

    private readonly Rational _precision;
    private readonly Rational[] _limits;
    private readonly double[] _nearest;

    public MeasureTest(TestKey key, Rational precision, IEnumerable<MeasureLiteral> literals)
        : this(key, precision, LimitsOf(literals))
    {
    }

    private MeasureTest(TestKey key, Rational precision, Rational[] limits)
        : base(key.IsOfStudy, key.Slot, (2 * limits.Length) + 1)
    {
        _precision = precision;
        _limits = limits;
        _nearest = [.. limits.Select(l => l.ToDouble())];
    }

    public override bool IsWidened => !_precision.IsZero;

    public override Cells CellsOf(FindingValue? value)
    {
        if (value is not MeasuredValue measured) return Cells.Unknown;
        var near = measured.Nearest;
        if (double.IsNaN(near)) return CellsOf(measured.Interval);
        var at = LowerBound(near);
        // Mostly floating point tells already; only what lies very near a limit is compared as fractions.
        var isPlain = !MayBeLimit(at - 1, near) && !MayBeLimit(at, near);
        return Cells.One(isPlain ? 2 * at : CellOf(measured.Interval.Low!.Value));
    }

    public override Cells WidenedCellsOf(FindingValue? value) =>
        value is MeasuredValue measured ? CellsOf(measured.Widened(_precision)) : Cells.Unknown;

    public Cells CellsOf(in Interval interval)
    {
        if (interval.IsPoint) return Cells.One(CellOf(interval.Low!.Value));
        if (interval.IsEmpty) return Cells.Strange;
        var first = interval.Low is { } low ? CellOf(low) : 0;
        var last = interval.High is { } high ? CellOf(high) : 2 * _limits.Length;
        // An open end at a limit leaves the limit's own cell out; in a gap there is always more beside it.
        if (interval is { Low: not null, LowClosed: false } && (first & 1) == 1) first++;
        if (interval is { High: not null, HighClosed: false } && (last & 1) == 1) last--;
        return new Cells(first, last);
    }

    /// <summary>2i + 1 for the limit i itself, 2i for what lies below it and above the one before.</summary>
    private int CellOf(Rational value)
    {
        var near = value.ToDouble();
        var at = LowerBound(near);
        while (MayBeLimit(at - 1, near) && value <= _limits[at - 1]) at--;
        for (; MayBeLimit(at, near); at++)
        {
            var order = value.CompareTo(_limits[at]);
            if (order == 0) return (2 * at) + 1;
            if (order < 0) break;
        }
        return 2 * at;
    }

    private bool MayBeLimit(int limit, double near)
    {
        if ((uint)limit >= (uint)_nearest.Length) return false;
        var at = _nearest[limit];
        // Written so that a limit beyond all floating-point numbers is compared as a fraction.
        return !(Math.Abs(at - near) > Doubt * Math.Max(Math.Abs(at), Math.Abs(near)));
    }

    /// <summary>The first limit that is not below.</summary>
    private int LowerBound(double near)
    {
        var (low, high) = (0, _nearest.Length);
        while (low < high)
        {
            var middle = (low + high) >>> 1;
            if (_nearest[middle] < near) low = middle + 1;
            else high = middle;
        }
        return low;
    }

    private static Rational[] LimitsOf(IEnumerable<MeasureLiteral> literals)
    {
        var limits = new SortedSet<Rational>();
        foreach (var literal in literals)
        {
            if (literal.Region.Low is { } low) limits.Add(low);
            if (literal.Region.High is { } high) limits.Add(high);
        }
        return [.. limits];
    }
}
