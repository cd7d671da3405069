using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
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
    private const int Stride = 4;
    private const int LongestCount = 16 * Stride;

    private readonly Rational _precision;
    private readonly Rational[] _limits;
    private readonly double[] _nearest;

    // Less than the one is surely below a limit, more than the other is surely above it. The first of those above belongs to
    // no limit. Empty where two limits are so near each other that floating point does not tell.
    private readonly double[] _below = [];
    private readonly double[] _above = [];

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
        double[] above = [double.NegativeInfinity, .. _nearest.Select(l => double.BitIncrement(l + (Doubt * Math.Abs(l))))];
        double[] below = [.. _nearest.Select(l => double.BitDecrement(l - (Doubt * Math.Abs(l))))];
        if (!_nearest.All(double.IsFinite) || Enumerable.Range(1, Math.Max(0, limits.Length - 1)).Any(i => above[i] >= below[i])) return;
        var padding = (Stride - (limits.Length % Stride)) % Stride;
        (_below, _above) = ([.. below, .. Enumerable.Repeat(double.PositiveInfinity, padding)], above);
    }

    public override bool IsWidened => !_precision.IsZero;

    public override Cells CellsOf(FindingValue? value)
    {
        if (value is not MeasuredValue measured) return Cells.Unknown;
        // Mostly floating point tells already.
        var near = measured.Nearest;
        var passed = CountBelow(_below, near);
        var above = _above;
        return (uint)passed < (uint)above.Length && near > above[passed] && near <= double.MaxValue
            ? Cells.One(2 * passed)
            : Compared(measured, passed);
    }

    /// <summary>What lies very near a limit is mostly the limit itself.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private Cells Compared(MeasuredValue measured, int passed)
    {
        if (_above.Length == 0 || !double.IsFinite(measured.Nearest)) return CellsOf(measured.Interval);
        var value = measured.Interval.Low!.Value;
        return Cells.One(value == _limits[passed - 1] ? (2 * passed) - 1 : CellOf(value));
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

    /// <summary>How many of the numbers, which are in order, lie below; without a branch for each, as values come in no order.</summary>
    private static int CountBelow(double[] numbers, double value)
    {
        var (start, end) = (0, numbers.Length);
        while (end - start > LongestCount)
        {
            var middle = ((start + end) / 2) & -Stride;
            if (numbers[middle] < value) start = middle;
            else end = middle;
        }
        var from = start;
        ref var first = ref MemoryMarshal.GetArrayDataReference(numbers);
        var (at, count) = (Vector256.Create(value), Vector256<long>.Zero);
        for (; start < end; start += Stride)
            count -= Vector256.LessThan(Vector256.LoadUnsafe(ref first, (nuint)start), at).AsInt64();
        return from + (int)Vector256.Sum(count);
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
