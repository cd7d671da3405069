using CsCheck;
using FindingRules.Model.Quantities;
using FindingRules.Model.Truths;
using Xunit;

namespace FindingRules.Tests.Model.Quantities;

public sealed class IntervalTests
{
    private static readonly Gen<(Interval A, Interval B)> _two = Gen.Select(AnyInterval.Gen, AnyInterval.Gen, (a, b) => (a, b));

    [Fact]
    public void Comparisons_are_decided_exactly_where_all_values_agree() => _two.Sample((a, b) =>
    {
        List<Rational> points = [.. AnyInterval.PointsOf(a), .. AnyInterval.PointsOf(b), .. AnyInterval.PointsOf(a.Intersect(b))];
        var pairs = (from x in points.Where(a.Contains) from y in points.Where(b.Contains) select (x, y)).ToList();
        Assert.Equal(Of(pairs, (x, y) => x < y), a.Below(b));
        Assert.Equal(Of(pairs, (x, y) => x <= y), a.AtMost(b));
        Assert.Equal(Of(pairs, (x, y) => x == y), a.EqualTo(b));
    }, iter: 600);

    [Fact]
    public void A_comparison_turned_round_is_its_opposite() => _two.Sample((a, b) =>
        Assert.Equal(Kleene.Not(a.Below(b)), b.AtMost(a)));

    [Fact]
    public void An_intersection_holds_what_both_hold() => _two.Sample((a, b) =>
    {
        var both = a.Intersect(b);
        Assert.Equal(both, b.Intersect(a));
        foreach (var x in AnyInterval.PointsOf(a).Concat(AnyInterval.PointsOf(b)))
            Assert.Equal(a.Contains(x) && b.Contains(x), both.Contains(x));
    });

    [Fact]
    public void One_interval_contains_another_when_it_holds_all_its_values() => _two.Sample((a, b) =>
    {
        Rational[] points = [.. AnyInterval.PointsOf(b), (b.Low ?? 0) - AnyInterval.Huge, (b.High ?? 0) + AnyInterval.Huge];
        Assert.Equal(a.Contains(b), points.Where(b.Contains).All(a.Contains));
    }, iter: 600);

    [Fact]
    public void Widened_ends_belong_to_it_and_an_end_without_limit_stays_so()
    {
        var half = new Rational(1, 2);
        Assert.Equal(Interval.Closed(half, 2 + half), new Interval(1, false, 2, false).Widen(half));
        Assert.Equal(Interval.Closed(3 - half, 3 + half), Interval.Point(3).Widen(half));
        Assert.Equal(new Interval(null, false, 2 + half, true), new Interval(null, false, 2, false).Widen(half));
        Assert.Equal(Interval.Unlimited, Interval.Unlimited.Widen(half));
    }

    [Fact]
    public void Widening_by_nothing_changes_nothing() => AnyInterval.Gen.Sample(a => Assert.Equal(a, a.Widen(Rational.Zero)));

    [Fact]
    public void Widening_only_adds() => AnyInterval.Gen.Sample(a => Assert.True(a.Widen(AnyInterval.Tiny).Contains(a)));

    [Theory]
    [InlineData(2, false, 2, false)]
    [InlineData(2, true, 2, false)]
    [InlineData(3, true, 2, true)]
    public void An_interval_without_a_value_is_empty_and_no_point(int low, bool lowClosed, int high, bool highClosed)
    {
        var empty = new Interval(low, lowClosed, high, highClosed);
        Assert.True(empty.IsEmpty);
        Assert.False(empty.IsPoint);
        Assert.False(Interval.Unlimited.Contains(empty));
        Assert.Null(Interval.Divide(Interval.Point(1), empty));
    }

    [Fact]
    public void A_point_holds_one_value()
    {
        Assert.True(Interval.Point(2).IsPoint);
        Assert.True(Interval.Point(2).Contains(2));
        Assert.False(Interval.Point(2).IsEmpty);
        Assert.False(Interval.Closed(2, 3).IsPoint);
        Assert.False(Interval.Unlimited.IsPoint);
    }

    private static Truth Of(List<(Rational, Rational)> pairs, Func<Rational, Rational, bool> holds) =>
        pairs.TrueForAll(p => holds(p.Item1, p.Item2)) ? Truth.True
        : pairs.Exists(p => holds(p.Item1, p.Item2)) ? Truth.Unknown
        : Truth.False;
}
