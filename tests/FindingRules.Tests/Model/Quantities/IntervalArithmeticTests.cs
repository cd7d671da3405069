using CsCheck;
using FindingRules.Model.Quantities;
using Xunit;

namespace FindingRules.Tests.Model.Quantities;

/// <summary>Against brute force: the result holds whatever two values give, and no end of it is further out than needed.</summary>
public sealed class IntervalArithmeticTests
{
    private static readonly Rational _near = new(1, 1_000);
    private static readonly Rational _far = 1_000;

    [Fact]
    public void Sum_is_all_that_two_values_may_give() => Check((a, b) => a + b, (x, y) => x + y);

    [Fact]
    public void Difference_is_all_that_two_values_may_give() => Check((a, b) => a - b, (x, y) => x - y);

    [Fact]
    public void Product_is_all_that_two_values_may_give() => Check((a, b) => a * b, (x, y) => x * y);

    [Fact]
    public void Quotient_is_all_that_two_values_may_give() => Check(Interval.Divide, (x, y) => y.IsZero ? null : x / y);

    [Fact]
    public void Quotient_is_unknown_exactly_where_the_divisor_may_be_zero() => AnyInterval.Gen.Sample(b =>
        Assert.Equal(b.Contains(Rational.Zero), Interval.Divide(Interval.Point(1), b) is null));

    [Theory]
    [InlineData(0, true, 2, true, true)]
    [InlineData(-1, true, 1, true, true)]
    [InlineData(0, false, 2, true, false)]
    [InlineData(-2, true, 0, false, false)]
    public void A_divisor_up_to_zero_is_known_and_one_through_zero_is_not(int low, bool lowClosed, int high, bool highClosed, bool isUnknown) =>
        Assert.Equal(isUnknown, Interval.Divide(Interval.Point(1), new Interval(low, lowClosed, high, highClosed)) is null);

    [Fact]
    public void An_open_end_at_zero_gives_a_quotient_without_limit() =>
        Assert.Equal(new Interval(new Rational(1, 2), true, null, false), Interval.Divide(Interval.Point(1), new Interval(0, false, 2, true)));

    [Fact]
    public void A_zero_that_is_reached_stays_reached_in_a_product()
    {
        var open = new Interval(0, false, 2, false);
        Assert.True((open * Interval.Closed(0, 3)).Contains(Rational.Zero));
        Assert.False((open * Interval.Closed(1, 3)).Contains(Rational.Zero));
        Assert.Equal(Interval.Point(0), Interval.Point(0) * Interval.Unlimited);
    }

    private static void Check(Func<Interval, Interval, Interval?> of, Func<Rational, Rational, Rational?> ofValues) =>
        Gen.Select(AnyInterval.Gen, AnyInterval.Gen).Sample((a, b) =>
        {
            if (of(a, b) is not { } result) return;
            var values = (from x in AnyInterval.PointsOf(a) from y in AnyInterval.PointsOf(b) select ofValues(x, y)!.Value).ToList();
            Assert.All(values, v => Assert.True(result.Contains(v), $"{Show(a)} with {Show(b)} is {Show(result)} without {v}"));
            Assert.True(IsReached(values, result.Low, result.LowClosed, -1), $"low of {Show(a)} with {Show(b)}: {Show(result)}");
            Assert.True(IsReached(values, result.High, result.HighClosed, 1), $"high of {Show(a)} with {Show(b)}: {Show(result)}");
        }, iter: 600);

    private static bool IsReached(List<Rational> values, Rational? end, bool isClosed, int sign) => end switch
    {
        null => values.Any(v => v * sign > _far),
        { } limit when isClosed => values.Contains(limit),
        { } limit => values.Any(v => Rational.Abs(v - limit) < _near),
    };

    private static string Show(Interval i) => $"{(i.LowClosed ? "[" : "(")}{i.Low}..{i.High}{(i.HighClosed ? "]" : ")")}";
}
