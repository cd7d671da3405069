using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;
using Xunit;
using static FindingRules.Tests.Engine.Properties.Settled.Saying;
using static FindingRules.Tests.Engine.Properties.Settled.Shoulder;

namespace FindingRules.Tests.Engine.Properties.Settled;

/// <summary>What counts as assessed, what normal stands for, and what was not assessable.</summary>
public sealed class AssessedAndNormalTests
{
    [Fact]
    public void Assessed_is_true_of_what_is_known_and_false_of_the_rest()
    {
        Assert.Equal(Truth.True, Of(Own.Assessed("echo"), Right("supraspinatus", ("echo", "anechoic"))));
        Assert.Equal(Truth.False, Of(Own.Assessed("echo"), Right("supraspinatus")));
        Assert.Equal(Truth.False, Of(Own.Assessed("echo"), Right("supraspinatus", ("echo", new NotAssessableValue()))));
        Assert.Equal(Truth.True, Of(Own.Assessed("thickness"), Right("supraspinatus", ("thickness", Below(2)))));
        Assert.Equal(Truth.True, Of(Own.Assessed("echo"), Right("supraspinatus").Normal()));
        Assert.Equal(Truth.True, Of(Own.Assessed("thickness"), Right("supraspinatus").Normal()));
        Assert.Equal(Truth.False, Of(Own.Assessed("reangled"), Right("supraspinatus").Normal()));
    }

    [Fact]
    public void A_structure_is_assessed_when_one_finding_is_known()
    {
        Assert.Equal(Truth.True, Of(Own.Assessed(), Right("supraspinatus", ("gap", 1))));
        Assert.Equal(Truth.True, Of(Own.Assessed(), Right("supraspinatus").Normal()));
        Assert.Equal(Truth.False, Of(Own.Assessed(), Right("supraspinatus")));
        Assert.Equal(Truth.False, Of(Own.Assessed(), Right("supraspinatus").NotAssessable()));
        Assert.Equal(Truth.False, Of(Own.Assessed(), Right("supraspinatus", ("gap", new NotAssessableValue()))));
    }

    [Fact]
    public void Not_assessable_is_true_only_where_it_was_sent_as_such()
    {
        Assert.Equal(Truth.True, Of(Own.NotAssessable("echo"), Right("supraspinatus", ("echo", new NotAssessableValue()))));
        Assert.Equal(Truth.True, Of(Own.NotAssessable("echo"), Right("supraspinatus", ("gap", 1)).NotAssessable()));
        Assert.Equal(Truth.False, Of(Own.NotAssessable("gap"), Right("supraspinatus", ("gap", 1)).NotAssessable()));
        Assert.Equal(Truth.False, Of(Own.NotAssessable("echo"), Right("supraspinatus", ("echo", "anechoic"))));
        Assert.Equal(Truth.False, Of(Own.NotAssessable("echo"), Right("supraspinatus")));
        Assert.Equal(Truth.False, Of(Own.NotAssessable("reangled"), Right("supraspinatus").Normal()));
    }

    [Fact]
    public void Not_assessable_of_one_lesion_or_fact_is_enough_and_not_of_what_was_not_sent()
    {
        var tried = new NotAssessableValue();
        var rule = Rule("R", Only("biceps"), Beside("supraspinatus").NotAssessable("echo"));
        var lesions = Right("supraspinatus").Lesion("L1", ("echo", "anechoic")).Lesion("L2", ("echo", tried));
        Assert.Equal(Truth.True, Decide([rule], Study(Right("biceps"), lesions)).Truth("R", "right biceps"));
        Assert.Equal(Truth.False, Decide([rule], Study(Right("biceps"))).Truth("R", "right biceps"));
        var facts = Rule("F", Scope.Study, Facts.NotAssessable("suspected"));
        Assert.Equal(Truth.True, Decide([facts], Study().WithFacts(("suspected", tried))).Truth("F", "study"));
        Assert.Equal(Truth.False, Decide([facts], Study()).Truth("F", "study"));
    }

    [Fact]
    public void From_outside_one_lesion_is_enough_and_an_absent_structure_was_not_assessed()
    {
        var rule = Rule("R", Only("biceps"), Beside("supraspinatus").Assessed("echo"));
        var lesions = Right("supraspinatus").Lesion("L1").Lesion("L2", ("echo", "anechoic"));
        Assert.Equal(Truth.True, Decide([rule], Study(Right("biceps"), lesions)).Truth("R", "right biceps"));
        Assert.Equal(Truth.False, Decide([rule], Study(Right("biceps"))).Truth("R", "right biceps"));
        Assert.Equal(Truth.False, Decide([rule], Study(Subject("biceps", Side.Unknown), lesions)).Truth("R", "biceps", Side.Unknown));
    }

    [Fact]
    public void Facts_are_assessed_when_they_were_sent()
    {
        var rule = Rule("R", Scope.Study, Facts.Assessed("suspected"));
        Assert.Equal(Truth.True, Decide([rule], Study().WithFacts(("suspected", "wood"))).Truth("R", "study"));
        Assert.Equal(Truth.False, Decide([rule], Study()).Truth("R", "study"));
    }

    [Fact]
    public void Normal_stands_for_each_declared_normal()
    {
        var normal = Right("supraspinatus").Normal();
        Assert.Equal(Truth.True, Of(Own.Is("echo", "fibrillar"), normal));
        Assert.Equal(Truth.False, Of(Own.Has("shadowing"), normal));
        Assert.Equal(Truth.False, Of(Own.Fluid(ExtentRelation.Reaches, 0, 0), normal));
    }

    [Fact]
    public void Normal_stands_for_a_normal_range_as_a_bound()
    {
        var normal = Right("supraspinatus").Normal();
        Assert.Equal(Truth.True, Of(Own.The("thickness").Below(Mm(9)), normal));
        Assert.Equal(Truth.Unknown, Of(Own.The("thickness").Below(Mm(5)), normal));
        Assert.Equal(Truth.False, Of(Own.The("thickness").Above(Mm(8)), normal));
    }

    [Fact]
    public void What_has_no_declared_normal_stays_unknown()
    {
        var normal = Right("supraspinatus").Normal();
        Assert.Equal(Truth.Unknown, Of(Own.Is("reangled", "persists"), normal));
        Assert.Equal(Truth.Unknown, Of(Own.The("gap").Above(Mm(1)), normal));
    }

    [Fact]
    public void An_explicit_finding_wins_and_where_it_departs_from_normal_nothing_is_filled()
    {
        var inside = Right("supraspinatus", ("thickness", 3), ("reangled", "persists")).Normal();
        var departing = Right("supraspinatus", ("thickness", 9)).Normal();
        Assert.Equal(Truth.True, Of(Own.The("thickness").Below(Mm(4)), inside));
        Assert.Equal(Truth.True, Of(Own.Is("echo", "fibrillar"), inside));
        Assert.Equal(Truth.True, Of(Own.The("thickness").Above(Mm(8)), departing));
        Assert.Equal(Truth.Unknown, Of(Own.Is("echo", "fibrillar"), departing));
    }

    [Fact]
    public void A_bound_that_only_may_lie_outside_the_normal_range_stops_the_filling_as_well()
    {
        var inside = Right("supraspinatus", ("thickness", Interval.Closed(3, 5))).Normal();
        Assert.Equal(Truth.True, Of(Own.Is("echo", "fibrillar"), inside));
        Assert.Equal(Truth.Unknown, Of(Own.Is("echo", "fibrillar"), Right("supraspinatus", ("thickness", Below(5))).Normal()));
    }

    [Fact]
    public void A_lesion_stops_the_filling()
    {
        var outcome = Decide([Rule("R", Cuff, Own.Is("echo", "fibrillar"))], Study(Right("supraspinatus").Normal().Lesion("L1", ("gap", 1))));
        Assert.Equal(Truth.Unknown, outcome.Truth("R", "right supraspinatus lesion L1"));
    }

    [Fact]
    public void Not_assessable_is_unknown_for_truth()
    {
        Assert.Equal(Truth.Unknown, Of(Own.Is("echo", "anechoic"), Right("supraspinatus", ("echo", new NotAssessableValue()))));
        Assert.Equal(Truth.Unknown, Of(Own.Is("echo", "anechoic"), Right("supraspinatus").NotAssessable()));
        Assert.Equal(Truth.True, Of(Own.Is("echo", "anechoic"), Right("supraspinatus", ("echo", "anechoic")).NotAssessable()));
    }

    [Fact]
    public void Not_assessable_for_a_lesion_hides_what_the_structure_has()
    {
        var outcome = Decide(
            [Rule("R", Cuff, Own.Is("echo", "anechoic"))],
            Study(Right("supraspinatus", ("echo", "anechoic")).Lesion("L1", ("echo", new NotAssessableValue()))));
        Assert.Equal(Truth.Unknown, outcome.Truth("R", "right supraspinatus lesion L1"));
    }

    private static Truth Of(Condition condition, StudySubject subject) =>
        Decide([Rule("R", Cuff, condition)], Study(subject)).Truth("R", "right supraspinatus");
}
