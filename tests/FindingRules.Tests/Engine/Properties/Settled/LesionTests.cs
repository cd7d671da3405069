using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;
using Xunit;
using static FindingRules.Tests.Engine.Properties.Settled.Saying;
using static FindingRules.Tests.Engine.Properties.Settled.Shoulder;

namespace FindingRules.Tests.Engine.Properties.Settled;

public sealed class LesionTests
{
    private static readonly Condition _darkAndShadowing = And(Own.Is("echo", "anechoic"), Own.Has("shadowing"));

    [Fact]
    public void A_rule_is_bound_to_one_lesion_at_a_time()
    {
        var outcome = Decide(
            [Rule("BOTH", Cuff, _darkAndShadowing)],
            Study(Right("supraspinatus")
                .Lesion("L1", ("echo", "anechoic"), ("shadowing", false))
                .Lesion("L2", ("echo", "fibrillar"), ("shadowing", true))));
        Assert.Equal(["right supraspinatus lesion L1", "right supraspinatus lesion L2"], outcome.Rules.Select(r => r.Subject.Key));
        Assert.All(outcome.Rules, r => Assert.Equal(Truth.False, r.Truth));
    }

    [Fact]
    public void Findings_are_never_copied_from_lesion_to_lesion()
    {
        var outcome = Decide(
            [Rule("DARK", Cuff, Own.Is("echo", "anechoic"))],
            Study(Right("supraspinatus").Lesion("L1", ("echo", "anechoic")).Lesion("L2")));
        Assert.Equal(Truth.True, outcome.Truth("DARK", "right supraspinatus lesion L1"));
        Assert.Equal(Truth.Unknown, outcome.Truth("DARK", "right supraspinatus lesion L2"));
    }

    [Fact]
    public void The_structures_own_findings_are_seen_by_its_lesions_unless_they_have_their_own()
    {
        var outcome = Decide(
            [Rule("DARK", Cuff, Own.Is("echo", "anechoic"))],
            Study(Right("supraspinatus", ("echo", "anechoic")).Lesion("L1").Lesion("L2", ("echo", "fibrillar"))));
        Assert.Equal(Truth.True, outcome.Truth("DARK", "right supraspinatus lesion L1"));
        Assert.Equal(Truth.False, outcome.Truth("DARK", "right supraspinatus lesion L2"));
    }

    [Fact]
    public void From_outside_a_statement_is_true_if_true_of_one_lesion_and_not_applies_after_that()
    {
        var dark = Beside("supraspinatus").Is("echo", "anechoic");
        var outcome = Decide(
            [Rule("DARK", Only("biceps"), dark), Rule("NOT", Only("biceps"), Not(dark))],
            Study(Right("biceps"), Right("supraspinatus").Lesion("L1", ("echo", "anechoic")).Lesion("L2", ("echo", "fibrillar"))));
        Assert.Equal(Truth.True, outcome.Truth("DARK", "right biceps"));
        Assert.Equal(Truth.False, outcome.Truth("NOT", "right biceps"));
    }

    [Fact]
    public void From_outside_two_statements_may_be_true_of_two_lesions()
    {
        var outcome = Decide(
            [Rule("BOTH", Only("biceps"), And(Beside("supraspinatus").Is("echo", "anechoic"), Beside("supraspinatus").Has("shadowing")))],
            Study(Right("biceps"), Right("supraspinatus")
                .Lesion("L1", ("echo", "anechoic"), ("shadowing", false))
                .Lesion("L2", ("echo", "fibrillar"), ("shadowing", true))));
        Assert.Equal(Truth.True, outcome.Truth("BOTH", "right biceps"));
    }

    [Fact]
    public void One_statement_takes_all_it_says_of_a_structure_from_one_lesion()
    {
        var gapIsLonger = Beside("supraspinatus").The("gap").Above(Beside("supraspinatus").The("tear-length"));
        var outcome = Decide(
            [Rule("LONGER", Only("biceps"), gapIsLonger)],
            Study(Right("biceps"), Right("supraspinatus")
                .Lesion("L1", ("gap", 5), ("tear-length", 9))
                .Lesion("L2", ("gap", 1), ("tear-length", 3))));
        Assert.Equal(Truth.False, outcome.Truth("LONGER", "right biceps"));
    }

    [Fact]
    public void One_structure_under_two_names_is_one_lesion_in_a_statement()
    {
        var outcome = Decide(
            [Rule("THICKER", Only("supraspinatus"), Own.The("thickness").Above(Beside("supraspinatus").The("thickness")), Gives(State, "thick"))],
            Study(Right("supraspinatus").Lesion("L1", ("thickness", 3)).Lesion("L2", ("thickness", 9))));
        Assert.Equal(Truth.False, outcome.Truth("THICKER", "right supraspinatus"));
    }

    [Fact]
    public void An_unknown_lesion_leaves_a_statement_from_outside_unknown_unless_another_one_is_true()
    {
        var rule = Rule("DARK", Only("biceps"), Beside("supraspinatus").Is("echo", "anechoic"));
        var open = Decide([rule], Study(Right("biceps"), Right("supraspinatus").Lesion("L1", ("echo", "fibrillar")).Lesion("L2")));
        var settled = Decide([rule], Study(Right("biceps"), Right("supraspinatus").Lesion("L1", ("echo", "anechoic")).Lesion("L2")));
        Assert.Equal(Truth.Unknown, open.Truth("DARK", "right biceps"));
        Assert.Equal(Truth.True, settled.Truth("DARK", "right biceps"));
    }

    [Fact]
    public void A_rule_for_the_whole_structure_is_true_if_true_of_one_of_its_lesions()
    {
        var outcome = Decide(
            [Rule("THICK", Cuff, Own.The("thickness").Above(Mm(8)), Gives(State, "thick"))],
            Study(Right("supraspinatus").Lesion("L1", ("thickness", 3)).Lesion("L2", ("thickness", 9))));
        Assert.Equal("right supraspinatus", Assert.Single(outcome.Rules).Subject.Key);
        Assert.Equal((TopicStatus.Published, "thick"), outcome.Topic(State, "right supraspinatus"));
    }

    [Fact]
    public void A_quantifier_counts_a_structure_once_however_many_lesions_it_has()
    {
        var outcome = Decide(
            [Rule("TWO", Scope.Study, AtLeast(2, Only("supraspinatus"), Own.Is("echo", "anechoic")))],
            Study(
                Right("supraspinatus").Lesion("L1", ("echo", "anechoic")).Lesion("L2", ("echo", "anechoic")),
                Left("supraspinatus", ("echo", "fibrillar"))));
        Assert.Equal(Truth.False, outcome.Truth("TWO", "study"));
    }

    [Fact]
    public void Each_lesion_has_its_own_answer_to_a_topic()
    {
        var outcome = Decide(
            [
                Rule("FULL", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "full")),
                Rule("BURSAL", Cuff, Own.Is("echo", "hypoechoic"), Gives(Depth, "bursal")),
                Rule("ASKS", Only("biceps"), And(Beside("supraspinatus").Is(Depth, "full"), Beside("supraspinatus").Is(Depth, "bursal"))),
            ],
            Study(Right("biceps"), Right("supraspinatus").Lesion("L1", ("echo", "anechoic")).Lesion("L2", ("echo", "hypoechoic"))));
        Assert.Equal((TopicStatus.Published, "full"), outcome.Topic(Depth, "right supraspinatus lesion L1"));
        Assert.Equal((TopicStatus.Published, "bursal"), outcome.Topic(Depth, "right supraspinatus lesion L2"));
        Assert.Equal(Truth.True, outcome.Truth("ASKS", "right biceps"));
    }
}
