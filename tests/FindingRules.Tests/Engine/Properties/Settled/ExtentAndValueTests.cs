using FindingRules.Model.Conditions;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;
using Xunit;
using static FindingRules.Tests.Engine.Properties.Settled.Saying;
using static FindingRules.Tests.Engine.Properties.Settled.Shoulder;

namespace FindingRules.Tests.Engine.Properties.Settled;

/// <summary>Extents are sets of intervals of the axis bursal (0), intrasubstance (1), articular (2). A value list is one test of membership.</summary>
public sealed class ExtentAndValueTests
{
    [Fact]
    public void One_stretch_must_span_and_separate_ones_do_not()
    {
        Assert.Equal(Truth.True, Of(Own.Fluid(ExtentRelation.Spans, 0, 2), [(0, 2)]));
        Assert.Equal(Truth.False, Of(Own.Fluid(ExtentRelation.Spans, 0, 2), [(0, 0), (2, 2)]));
        Assert.Equal(Truth.False, Of(Own.Fluid(ExtentRelation.Spans, 0, 2), [(0, 1)]));
        Assert.Equal(Truth.True, Of(Own.Fluid(ExtentRelation.Spans, 0, 1), [(0, 2)]));
    }

    [Fact]
    public void Any_stretch_may_reach()
    {
        Assert.Equal(Truth.True, Of(Own.Fluid(ExtentRelation.Reaches, 2, 2), [(0, 0), (2, 2)]));
        Assert.Equal(Truth.False, Of(Own.Fluid(ExtentRelation.Reaches, 1, 1), [(0, 0), (2, 2)]));
    }

    [Fact]
    public void Within_needs_a_stretch_and_none_may_leave()
    {
        Assert.Equal(Truth.True, Of(Own.Fluid(ExtentRelation.Within, 0, 1), [(0, 0), (1, 1)]));
        Assert.Equal(Truth.False, Of(Own.Fluid(ExtentRelation.Within, 0, 1), [(0, 0), (2, 2)]));
        Assert.Equal(Truth.False, Of(Own.Fluid(ExtentRelation.Within, 0, 2), []));
    }

    [Fact]
    public void None_is_false_and_not_sent_is_unknown()
    {
        Assert.Equal(Truth.False, Of(Own.Fluid(ExtentRelation.Reaches, 0, 0), []));
        var notSent = Decide([Rule("R", Cuff, Own.Fluid(ExtentRelation.Reaches, 0, 0))], Study(Right("supraspinatus")));
        Assert.Equal(Truth.Unknown, notSent.Truth("R", "right supraspinatus"));
    }

    [Theory]
    [InlineData("wood", Truth.True)]
    [InlineData("glass", Truth.True)]
    [InlineData("metal", Truth.False)]
    public void A_value_list_is_one_test_of_membership(string suspected, Truth expected)
    {
        var list = Facts.Is("suspected", "wood", "glass");
        var outcome = Decide(
            [Rule("IN", Scope.Study, list), Rule("OUT", Scope.Study, Not(list))],
            Study().WithFacts(("suspected", suspected)));
        Assert.Equal(expected, outcome.Truth("IN", "study"));
        Assert.Equal(Kleene.Not(expected), outcome.Truth("OUT", "study"));
    }

    [Fact]
    public void A_value_not_sent_is_unknown_and_never_false()
    {
        var outcome = Decide(
            [
                Rule("IS", Scope.Study, Facts.Is("suspected", "wood")),
                Rule("NOT", Scope.Study, Not(Facts.Is("suspected", "wood"))),
                Rule("SIGN", Scope.Study, Facts.Has("trauma")),
            ],
            Study());
        Assert.All(outcome.Rules, r => Assert.Equal(Truth.Unknown, r.Truth));
    }

    private static Truth Of(Condition condition, (int, int)[] fluid)
    {
        StudySubject subject = Right("supraspinatus", ("fluid", fluid));
        return Decide([Rule("R", Cuff, condition)], Study(subject)).Truth("R", "right supraspinatus");
    }
}
