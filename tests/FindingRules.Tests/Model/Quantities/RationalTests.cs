using System.Numerics;
using CsCheck;
using FindingRules.Model.Quantities;
using Xunit;

namespace FindingRules.Tests.Model.Quantities;

public sealed class RationalTests
{
    private static readonly Gen<Rational> _any = Gen.Select(Gen.Int[-500, 500], Gen.Int[1, 40], (n, d) => new Rational(n, d));

    [Theory]
    [InlineData("0", 0, 1)]
    [InlineData("-0", 0, 1)]
    [InlineData("007", 7, 1)]
    [InlineData("4.60", 23, 5)]
    [InlineData("-4.6", -23, 5)]
    [InlineData("0.125", 1, 8)]
    public void Reads_plain_decimals(string text, int numerator, int denominator)
    {
        Assert.True(Rational.TryRead(text, out var value));
        Assert.Equal(new Rational(numerator, denominator), value);
    }

    [Theory]
    [InlineData("")]
    [InlineData("-")]
    [InlineData("--1")]
    [InlineData("+1")]
    [InlineData(".5")]
    [InlineData("5.")]
    [InlineData("1.2.3")]
    [InlineData("1..2")]
    [InlineData("1e3")]
    [InlineData("1,5")]
    [InlineData("1 5")]
    [InlineData(" 1")]
    [InlineData("1_000")]
    [InlineData("٣")]
    [InlineData("NaN")]
    public void Refuses_everything_else(string text) => Assert.False(Rational.TryRead(text, out _));

    [Fact]
    public void Reads_28_digits_exactly_and_not_29()
    {
        const string longest = "1234567890123456789012345678";
        Assert.True(Rational.TryRead(longest, out var whole));
        Assert.Equal(longest, whole.ToString());
        Assert.True(Rational.TryRead("0.123456789012345678901234567", out var fraction));
        Assert.Equal("0.123456789012345678901234567", fraction.ToString());
        Assert.False(Rational.TryRead(longest + "9", out _));
        Assert.False(Rational.TryRead("0." + longest, out _));
    }

    [Fact]
    public void Is_always_in_lowest_terms_with_a_positive_denominator()
    {
        var value = new Rational(6, -4);
        Assert.Equal((-3, 2), ((int)value.Numerator, (int)value.Denominator));
        Assert.Equal(Rational.Zero, new Rational(0, -7));
        Assert.Equal(default, Rational.Zero);
        Assert.Equal(1, Rational.Zero.Denominator);
    }

    [Fact]
    public void A_denominator_of_zero_is_a_bug_of_the_caller()
    {
        Assert.Throws<DivideByZeroException>(() => new Rational(1, 0));
        Assert.Throws<DivideByZeroException>(() => Rational.One / Rational.Zero);
    }

    [Fact]
    public void A_third_of_ten_times_three_is_ten() => Assert.Equal(10, new Rational(10, 1) / 3 * 3);

    [Fact]
    public void Tenths_add_up_as_decimals_do() => Assert.Equal(new Rational(3, 10), new Rational(1, 10) + new Rational(2, 10));

    [Fact]
    public void Obeys_the_laws_of_a_field() => Gen.Select(_any, _any, _any).Sample((a, b, c) =>
    {
        Assert.Equal(a + b, b + a);
        Assert.Equal(a * b, b * a);
        Assert.Equal(a * (b + c), (a * b) + (a * c));
        Assert.Equal(a, a + b - b);
        if (!b.IsZero) Assert.Equal(a, a / b * b);
        Assert.Equal(a.Sign < 0 ? -a : a, Rational.Abs(a));
    });

    [Fact]
    public void Is_ordered_as_its_difference_has_a_sign() => Gen.Select(_any, _any).Sample((a, b) =>
    {
        Assert.Equal((a - b).Sign, a.CompareTo(b));
        Assert.Equal((a < b, a <= b, a > b, a >= b, a == b, a != b), (b > a, b >= a, b < a, b <= a, b == a, !(a == b)));
        Assert.Equal(a <= b ? (a, b) : (b, a), (Rational.Min(a, b), Rational.Max(a, b)));
        if (a == b) Assert.Equal(a.GetHashCode(), b.GetHashCode());
    });

    [Fact]
    public void Exact_text_reads_back_as_the_same_number() => _any.Sample(a =>
    {
        var text = a.ToDecimalText(out var isExact);
        Assert.True(Rational.TryRead(text, out var read), text);
        Assert.Equal(isExact, read == a);
        if (!isExact) Assert.True(Rational.Abs(read - a) <= new Rational(1, 20_000), $"{a} as {text}");
    });

    [Theory]
    [InlineData(1, 3, 2, "0.33")]
    [InlineData(-2, 3, 2, "-0.67")]
    [InlineData(1, 3, 0, "0")]
    [InlineData(-1, 3, 0, "0")]
    [InlineData(200, 3, 0, "67")]
    public void Rounds_what_does_not_end(int numerator, int denominator, int places, string expected)
    {
        Assert.Equal(expected, new Rational(numerator, denominator).ToDecimalText(out var isExact, places));
        Assert.False(isExact);
    }

    [Theory]
    [InlineData(23, 5, "4.6")]
    [InlineData(-1, 8, "-0.125")]
    [InlineData(100, 1, "100")]
    [InlineData(0, 1, "0")]
    public void Shows_no_zeros_that_say_nothing(int numerator, int denominator, string expected)
    {
        Assert.Equal(expected, new Rational(numerator, denominator).ToDecimalText(out var isExact, places: 0));
        Assert.True(isExact);
    }

    /// <summary>Small numbers are kept in machine words: around the limits of those it must still be the same arithmetic.</summary>
    [Fact]
    public void Is_the_arithmetic_of_big_integers_around_every_limit_of_machine_words()
    {
        long[] edges = [0, 1, 2, 3, 10, int.MaxValue, 1L << 31, (1L << 62) - 1, 1L << 62, (1L << 62) + 1, long.MaxValue];
        var number = Gen.Select(Gen.Int[0, edges.Length - 1].Select(i => edges[i]), Gen.Int[-2, 2], Gen.Bool, (edge, by, isNegative) =>
            isNegative ? -((BigInteger)edge + by) : (BigInteger)edge + by);
        var fraction = Gen.Select(number, number, (n, d) => (N: n, D: d.IsZero ? BigInteger.One : d));
        Gen.Select(fraction, fraction).Sample((a, b) =>
        {
            var (x, y) = (new Rational(a.N, a.D), new Rational(b.N, b.D));
            Assert.Equal(new Rational((a.N * b.D) + (b.N * a.D), a.D * b.D), x + y);
            Assert.Equal(new Rational((a.N * b.D) - (b.N * a.D), a.D * b.D), x - y);
            Assert.Equal(new Rational(a.N * b.N, a.D * b.D), x * y);
            if (!b.N.IsZero) Assert.Equal(new Rational(a.N * b.D, a.D * b.N), x / y);
            Assert.Equal((a.N * b.D * a.D.Sign * b.D.Sign).CompareTo(b.N * a.D * a.D.Sign * b.D.Sign), x.CompareTo(y));
            Assert.Equal(a.N * b.D == b.N * a.D, x == y && x.GetHashCode() == y.GetHashCode());
            Assert.Equal((x.Numerator * a.D, a.N.Sign * a.D.Sign), (x.Denominator * a.N, x.Sign));
        }, iter: 20_000);
    }
}
