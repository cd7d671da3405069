using FindingRules.Model.Conditions;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;
using Xunit;
using static FindingRules.Tests.Engine.Properties.Settled.Saying;
using static FindingRules.Tests.Engine.Properties.Settled.Shoulder;

namespace FindingRules.Tests.Engine.Properties.Settled;

public sealed class EarlierTests
{
    private static readonly Condition _grew = Own.The("tear-length").Above(Own.Earlier().The("tear-length"));

    [Fact]
    public void Unknown_without_an_earlier_study_and_where_it_has_no_such_structure()
    {
        var now = Study(Right("supraspinatus", ("tear-length", 9)));
        Assert.Equal(Truth.Unknown, Of(now));
        Assert.Equal(Truth.Unknown, Of(now.WithEarlier(Left("supraspinatus", ("tear-length", 5)))));
        Assert.Equal(Truth.True, Of(now.WithEarlier(Right("supraspinatus", ("tear-length", 5)))));
    }

    [Fact]
    public void A_lesion_is_compared_with_the_lesion_of_the_same_id()
    {
        var outcome = Decide(
            [Rule("GREW", Cuff, _grew)],
            Study(Right("supraspinatus").Lesion("L1", ("tear-length", 9)).Lesion("L2", ("tear-length", 9)).Lesion("L3", ("tear-length", 9)))
                .WithEarlier(Right("supraspinatus", ("tear-length", 1)).Lesion("L1", ("tear-length", 5)).Lesion("L2", ("tear-length", 12))));
        Assert.Equal(Truth.True, outcome.Truth("GREW", "right supraspinatus lesion L1"));
        Assert.Equal(Truth.False, outcome.Truth("GREW", "right supraspinatus lesion L2"));
        Assert.Equal(Truth.Unknown, outcome.Truth("GREW", "right supraspinatus lesion L3"));
    }

    [Fact]
    public void A_lesion_is_compared_with_the_structure_where_that_had_no_lesions()
    {
        var outcome = Decide(
            [Rule("GREW", Cuff, _grew)],
            Study(Right("supraspinatus").Lesion("L1", ("tear-length", 9))).WithEarlier(Right("supraspinatus", ("tear-length", 5))));
        Assert.Equal(Truth.True, outcome.Truth("GREW", "right supraspinatus lesion L1"));
    }

    [Fact]
    public void A_structure_is_compared_with_each_lesion_it_had()
    {
        var study = Study(Right("supraspinatus", ("tear-length", 9)))
            .WithEarlier(Right("supraspinatus").Lesion("L1", ("tear-length", 12)).Lesion("L2", ("tear-length", 5)));
        Assert.Equal(Truth.True, Of(study));
    }

    [Fact]
    public void A_side_not_stated_twice_is_not_the_same_side()
    {
        var outcome = Decide(
            [Rule("GREW", Cuff, _grew)],
            Study(Subject("supraspinatus", Side.Unknown, ("tear-length", 9))).WithEarlier(Subject("supraspinatus", Side.Unknown, ("tear-length", 5))));
        Assert.Equal(Truth.Unknown, outcome.Truth("GREW", "supraspinatus", Side.Unknown));
    }

    [Fact]
    public void Other_structures_and_facts_have_an_earlier_value_too()
    {
        var outcome = Decide(
            [
                Rule("BESIDE", Only("biceps"), Beside("supraspinatus").Earlier().Is("echo", "anechoic")),
                Rule("FACT", Scope.Study, Facts.Earlier().Is("modality", "radiograph")),
                Rule("ASSESSED", Only("biceps"), Own.Earlier().Assessed()),
            ],
            Study(Right("biceps", ("echo", "fibrillar"))).WithFacts(("modality", "ultrasound"))
                .WithEarlier(Right("supraspinatus", ("echo", "anechoic"))) with
            {
                EarlierFacts = Study().WithFacts(("modality", "radiograph")).Facts,
            });
        Assert.Equal(Truth.True, outcome.Truth("BESIDE", "right biceps"));
        Assert.Equal(Truth.True, outcome.Truth("FACT", "study"));
        Assert.Equal(Truth.False, outcome.Truth("ASSESSED", "right biceps"));
    }

    [Fact]
    public void A_normal_subject_of_the_earlier_study_is_filled_in_there()
    {
        var rule = Rule("R", Cuff, Own.Earlier().Is("echo", "fibrillar"));
        var outcome = Decide([rule], Study(Right("supraspinatus")).WithEarlier(Right("supraspinatus").Normal()));
        Assert.Equal(Truth.True, outcome.Truth("R", "right supraspinatus"));
    }

    [Fact]
    public void A_derived_measure_is_worked_out_in_the_earlier_study()
    {
        var rest = Calculate(Own.The("thickness"), ArithmeticOperator.Subtract, Own.The("gap"));
        var rule = Rule("R", Cuff, Own.Earlier().Derived("rest", rest).Above(Own.Derived("rest", rest)));
        var outcome = Decide([rule], Study(Right("supraspinatus", ("thickness", 6), ("gap", 4)))
            .WithEarlier(Right("supraspinatus", ("thickness", 6), ("gap", 1))));
        Assert.Equal(Truth.True, outcome.Truth("R", "right supraspinatus"));
    }

    [Fact]
    public void The_earlier_study_has_no_earlier_study_of_its_own()
    {
        var growth = Calculate(Own.The("tear-length"), ArithmeticOperator.Subtract, Own.Earlier().The("tear-length"));
        var outcome = Decide(
            [Rule("NOW", Cuff, Own.Derived("growth", growth).Below(Mm(9))), Rule("THEN", Cuff, Own.Earlier().Derived("growth", growth).Below(Mm(9)))],
            Study(Right("supraspinatus", ("tear-length", 9))).WithEarlier(Right("supraspinatus", ("tear-length", 5))));
        Assert.Equal(Truth.True, outcome.Truth("NOW", "right supraspinatus"));
        Assert.Equal(Truth.Unknown, outcome.Truth("THEN", "right supraspinatus"));
    }

    private static Truth Of(Study study) => Decide([Rule("GREW", Cuff, _grew)], study).Truth("GREW", "right supraspinatus");
}
