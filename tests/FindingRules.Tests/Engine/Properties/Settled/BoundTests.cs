using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;
using Xunit;
using static FindingRules.Tests.Engine.Properties.Settled.Saying;
using static FindingRules.Tests.Engine.Properties.Settled.Shoulder;

namespace FindingRules.Tests.Engine.Properties.Settled;

/// <summary>Bounds and borderline, and numbers. Precision: thickness 0.5 mm, tear-length 1 mm, gap none.</summary>
public sealed class BoundTests
{
    [Fact]
    public void A_bound_decides_only_what_holds_for_all_it_may_be()
    {
        Assert.Equal(Truth.True, Both(Own.The("gap").Below(Mm(2)), ("gap", Below(2))).Truth);
        Assert.Equal(Truth.True, Both(Own.The("gap").Below(Mm(3)), ("gap", Below(2))).Truth);
        Assert.Equal(Truth.False, Both(Own.The("gap").Above(Mm(2)), ("gap", Below(2))).Truth);
        Assert.Equal(Truth.Unknown, Both(Own.The("gap").Below(Mm(1)), ("gap", Below(2))).Truth);
        Assert.Equal(Truth.Unknown, Both(Compare(Own.The("gap"), Comparator.Equal, Mm(1)), ("gap", Below(2))).Truth);
        Assert.Equal(Truth.False, Both(Compare(Own.The("gap"), Comparator.Equal, Mm(2)), ("gap", Below(2))).Truth);
    }

    [Fact]
    public void Both_ends_of_between_belong_to_it()
    {
        var between = Own.The("gap").Between(Mm(2), Mm(4));
        Assert.Equal(Truth.True, Both(between, ("gap", 2)).Truth);
        Assert.Equal(Truth.True, Both(between, ("gap", 4)).Truth);
        Assert.Equal(Truth.False, Both(between, ("gap", 5)).Truth);
        Assert.Equal(Truth.True, Both(between, ("gap", Interval.Closed(2, 4))).Truth);
        Assert.Equal(Truth.Unknown, Both(between, ("gap", Interval.Closed(2, 5))).Truth);
        Assert.Equal(Truth.False, Both(between, ("gap", Below(2))).Truth);
    }

    [Fact]
    public void A_divisor_that_may_be_zero_gives_unknown()
    {
        var share = Calculate(Own.The("thickness"), ArithmeticOperator.Divide, Own.The("gap")).Above(Of(0, Unit.Plain));
        Assert.Equal(Truth.Unknown, Both(share, ("thickness", 5), ("gap", 0)).Truth);
        Assert.Equal(Truth.Unknown, Both(share, ("thickness", 5), ("gap", Below(2))).Truth);
        Assert.Equal(Truth.True, Both(share, ("thickness", 5), ("gap", new Interval(0, false, 2, true))).Truth);
    }

    [Fact]
    public void One_unknown_quantity_makes_the_whole_unknown()
    {
        var sum = Calculate(Own.The("gap"), ArithmeticOperator.Add, Own.The("thickness")).Above(Mm(1));
        var nothing = Calculate(Of(0, Unit.Plain), ArithmeticOperator.Multiply, Own.The("thickness")).Below(Mm(1));
        Assert.Equal(Truth.Unknown, Both(sum, ("gap", 5)).Truth);
        Assert.Equal(Truth.Unknown, Both(nothing).Truth);
    }

    [Fact]
    public void Borderline_is_a_truth_that_differs_somewhere_within_the_precision()
    {
        var above = Own.The("thickness").Above(Mm(4));
        Assert.Equal((Truth.True, Truth.Unknown), Both(above, ("thickness", new Rational(44, 10))));
        Assert.Equal((Truth.False, Truth.Unknown), Both(above, ("thickness", new Rational(36, 10))));
        Assert.Equal((Truth.True, Truth.True), Both(above, ("thickness", new Rational(46, 10))));
        Assert.Equal((Truth.False, Truth.False), Both(above, ("thickness", 3)));
    }

    [Fact]
    public void The_ends_of_the_precision_belong_to_it()
    {
        Assert.Equal((Truth.True, Truth.Unknown), Both(Own.The("thickness").Above(Mm(4)), ("thickness", new Rational(9, 2))));
        Assert.Equal((Truth.True, Truth.Unknown), Both(Own.The("thickness").Below(Mm(4)), ("thickness", new Interval(0, true, new Rational(7, 2), false))));
    }

    [Fact]
    public void All_measures_are_widened_together_and_constants_and_exact_ones_are_not()
    {
        var longer = Own.The("tear-length").Above(Own.The("thickness"));
        Assert.Equal((Truth.True, Truth.Unknown), Both(longer, ("tear-length", new Rational(64, 10)), ("thickness", 5)));
        Assert.Equal((Truth.True, Truth.True), Both(longer, ("tear-length", new Rational(66, 10)), ("thickness", 5)));
        Assert.Equal((Truth.True, Truth.True), Both(Own.The("gap").Above(Mm(4)), ("gap", new Rational(41, 10))));
    }

    [Fact]
    public void A_bound_is_widened_and_a_filled_in_normal_is_not()
    {
        Assert.Equal((Truth.True, Truth.Unknown), Both(Own.The("thickness").Below(Mm(2)), ("thickness", Below(2))));
        var outcome = Decide([Rule("R", Cuff, Own.The("thickness").Above(Mm(8)))], Study(Right("supraspinatus").Normal()));
        Assert.Equal(Truth.False, outcome.Truth("R", "right supraspinatus"));
        Assert.Equal(Truth.False, outcome.Rule("R", "right supraspinatus").Widened);
    }

    [Fact]
    public void Topics_are_taken_as_decided_when_measures_are_widened()
    {
        var outcome = Decide(
            [
                Rule("THICK", Cuff, Own.The("thickness").Above(Mm(4)), Gives(State, "thick")),
                Rule("ASKS", Cuff, Own.Is(State, "thick")),
            ],
            Study(Right("supraspinatus", ("thickness", new Rational(41, 10)))));
        Assert.Equal(Truth.Unknown, outcome.Rule("THICK", "right supraspinatus").Widened);
        Assert.Equal(Truth.True, outcome.Rule("ASKS", "right supraspinatus").Widened);
    }

    [Fact]
    public void Quantities_are_equal_whatever_unit_they_are_in()
    {
        Assert.Equal(Truth.True, Both(Compare(Own.The("gap"), Comparator.Equal, Of(3, Unit.Centimetre)), ("gap", 30)).Truth);
        Assert.Equal(Truth.False, Both(Own.The("gap").Below(Of(3, Unit.Centimetre)), ("gap", 30)).Truth);
        var years = Decide(
            [Rule("R", Scope.Study, Compare(Facts.The("age"), Comparator.Equal, Of(480, Unit.Month)))],
            Study().WithFacts(("age", 40)));
        Assert.Equal(Truth.True, years.Truth("R", "study"));
    }

    [Fact]
    public void A_third_of_a_number_three_times_is_the_number()
    {
        var third = Calculate(Own.The("gap"), ArithmeticOperator.Divide, Of(3, Unit.Plain));
        var whole = Calculate(Calculate(third, ArithmeticOperator.Add, third), ArithmeticOperator.Add, third);
        Assert.Equal(Truth.True, Both(Compare(whole, Comparator.Equal, Own.The("gap")), ("gap", new Rational(1, 10))).Truth);
    }

    private static (Truth Truth, Truth Widened) Both(Condition condition, params (string, object)[] findings)
    {
        var rule = Decide([Rule("R", Cuff, condition)], Study(Right("supraspinatus", findings))).Rule("R", "right supraspinatus");
        return (rule.Truth, rule.Widened);
    }
}
