using CsCheck;
using FindingRules.Engine.Compiling.Planes;
using FindingRules.Model.Quantities;
using FindingRules.Model.Truths;
using FindingRules.Testing.Generators;
using FindingRules.Tests.Model.Quantities;
using Xunit;

namespace FindingRules.Tests.Engine.Planes;

public sealed class MeasureCellsTests
{
    private static readonly Rational _third = new(1, 3);

    /// <summary>Too near a third for floating point to tell.</summary>
    private static readonly Rational _aLittleLess = _third - new Rational(1, System.Numerics.BigInteger.Pow(10, 25));

    [Fact]
    public void Fractions_that_floating_point_cannot_tell_apart_have_cells_of_their_own()
    {
        var test = Cut(_aLittleLess, _third);
        Assert.Equal(Cells.One(1), test.CellsOf(Interval.Point(_aLittleLess)));
        Assert.Equal(Cells.One(2), test.CellsOf(Interval.Point((_aLittleLess + _third) / 2)));
        Assert.Equal(Cells.One(3), test.CellsOf(Interval.Point(_third)));
        Assert.Equal(Cells.One(0), test.CellsOf(Interval.Point(_aLittleLess - (_third - _aLittleLess))));
        Assert.Equal(Cells.One(4), test.CellsOf(Interval.Point(_third + (_third - _aLittleLess))));
    }

    [Fact]
    public void An_open_end_at_a_limit_leaves_the_limit_out()
    {
        var test = Cut(2, 5);
        Assert.Equal(new Cells(2, 2), test.CellsOf(new Interval(2, false, 5, false)));
        Assert.Equal(new Cells(1, 3), test.CellsOf(Interval.Closed(2, 5)));
        Assert.Equal(new Cells(0, 0), test.CellsOf(new Interval(null, false, 2, false)));
        Assert.Equal(new Cells(4, 4), test.CellsOf(new Interval(5, false, null, false)));
        Assert.Equal(new Cells(0, 4), test.CellsOf(Interval.Unlimited));
    }

    [Fact]
    public void A_value_that_contradicts_itself_lies_nowhere() =>
        Assert.Equal(Cells.Strange, Cut(2).CellsOf(new Interval(3, true, 1, true)));

    [Fact]
    public void A_cell_holds_what_compares_alike_with_every_limit() => AnyInterval.Gen.Select(Gen.Int[-4, 4], Gen.Int[-4, 4]).Sample((interval, a, b) =>
    {
        if (interval.IsEmpty || a == b) return;
        var (low, high) = (Math.Min(a, b), Math.Max(a, b));
        var cells = Cut(low, high).CellsOf(interval);
        Assert.Equal(interval.Contains(low), cells.First <= 1 && cells.Last >= 1);
        Assert.Equal(interval.Contains(high), cells.First <= 3 && cells.Last >= 3);
        Assert.Equal(interval.Below(Interval.Point(low)) == Truth.True, cells.Last == 0);
        Assert.Equal(Interval.Point(high).Below(interval) == Truth.True, cells.First == 4);
    });

    private static MeasureTest Cut(params Rational[] limits)
    {
        var finding = ModelOf.Measure("thickness", Unit.Millimetre, Interval.Closed(0, 12));
        var key = new TestKey(TestSort.Measure, false, 0, finding);
        return new MeasureTest(key, 0, limits.Select(l => new MeasureLiteral(key, Interval.Point(l), IsNegated: false)));
    }
}
