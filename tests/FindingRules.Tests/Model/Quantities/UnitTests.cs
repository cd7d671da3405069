using FindingRules.Model.Quantities;
using Xunit;

namespace FindingRules.Tests.Model.Quantities;

public sealed class UnitTests
{
    [Theory]
    [InlineData("3", "cm", "30", "mm")]
    [InlineData("3", "cm", "3.0", "cm")]
    [InlineData("1", "cm2", "100", "mm2")]
    [InlineData("55", "%", "0.55", "1")]
    [InlineData("2", "years", "24", "months")]
    [InlineData("2", "a", "24", "mo")]
    public void The_same_quantity_whatever_the_unit(string number, string unit, string otherNumber, string otherUnit)
    {
        var (one, other) = (Of(number, unit), Of(otherNumber, otherUnit));
        Assert.Equal(one, other);
        Assert.True(one == other);
        Assert.Equal(one.GetHashCode(), other.GetHashCode());
        Assert.Equal(one.InBase, other.InBase);
    }

    [Theory]
    [InlineData("3", "cm", "3", "mm")]
    [InlineData("3", "mm", "3", "mm2")]
    [InlineData("3", "deg", "3", "1")]
    [InlineData("3", "months", "3", "1")]
    public void Not_the_same_quantity(string number, string unit, string otherNumber, string otherUnit) =>
        Assert.NotEqual(Of(number, unit), Of(otherNumber, otherUnit));

    [Fact]
    public void Every_unit_is_found_by_its_name_and_its_code()
    {
        Assert.All(Unit.All, u => Assert.Same(u, Unit.Find(u.Name)));
        Assert.All(Unit.All, u => Assert.Same(u, Unit.Find(u.Ucum)));
        Assert.Null(Unit.Find("inch"));
        Assert.Null(Unit.Find("MM"));
        Assert.Null(Unit.Find(""));
    }

    [Fact]
    public void Every_unit_goes_to_base_and_back() => Assert.All(Unit.All, u =>
    {
        var quantity = new Quantity(new Rational(7, 3), u);
        Assert.Equal(quantity, Quantity.FromBase(quantity.InBase, u));
        Assert.Equal(quantity.Number, Quantity.FromBase(quantity.InBase, u).Number);
    });

    [Fact]
    public void Dimensions_multiply_and_divide()
    {
        var length = Unit.Millimetre.Dimension;
        Assert.Equal(Unit.SquareCentimetre.Dimension, length * length);
        Assert.Equal(Dimension.None, length / length);
        Assert.Equal(length, Unit.SquareMillimetre.Dimension / length);
        Assert.NotEqual(Unit.CentimetrePerSecond.Dimension, length);
    }

    [Fact]
    public void Every_unit_has_a_dimension_with_a_title() =>
        Assert.All(Unit.All, u => Assert.DoesNotContain("^", u.Dimension.Title, StringComparison.Ordinal));

    [Theory]
    [InlineData(14, 1, "mm", "14 mm")]
    [InlineData(55, 1, "%", "55 %")]
    [InlineData(7, 5, "1", "1.4")]
    [InlineData(1, 3, "cm", "about 0.33 cm")]
    public void Is_shown_with_its_unit(int numerator, int denominator, string unit, string expected) =>
        Assert.Equal(expected, new Quantity(new Rational(numerator, denominator), Unit.Find(unit)!).ToString());

    private static Quantity Of(string number, string unit)
    {
        Assert.True(Rational.TryRead(number, out var value));
        return new Quantity(value, Unit.Find(unit)!);
    }
}
