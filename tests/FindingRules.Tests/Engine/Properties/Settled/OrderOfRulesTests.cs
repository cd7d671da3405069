using FindingRules.Engine.Evaluating;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;
using Xunit;
using static FindingRules.Tests.Engine.Properties.Settled.Saying;
using static FindingRules.Tests.Engine.Properties.Settled.Shoulder;

namespace FindingRules.Tests.Engine.Properties.Settled;

/// <summary>Order: truth, then over, then conflict, then holds, then publishing; and one layer after another.</summary>
public sealed class OrderOfRulesTests
{
    private const string Subject = "right supraspinatus";

    [Fact]
    public void A_rule_yields_where_its_superior_is_true_as_well()
    {
        var outcome = Decide(
            [
                Rule("FULL", Cuff, Own.Is("reangled", "persists"), Gives(Depth, "full"), "BURSAL"),
                Rule("BURSAL", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "bursal")),
            ],
            Study(Right("supraspinatus", ("reangled", "persists"), ("echo", "anechoic"))));
        Assert.Equal(Standing.Stands, outcome.Standing("FULL", Subject));
        Assert.Equal(Standing.Yields, outcome.Standing("BURSAL", Subject));
        Assert.Equal((TopicStatus.Published, "full"), outcome.Topic(Depth, Subject));
    }

    [Fact]
    public void Over_reaches_through_other_rules_even_where_those_are_false()
    {
        var outcome = Decide(
            [
                Rule("A", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "full"), "B"),
                Rule("B", Cuff, Own.Is("reangled", "resolves"), Gives(Depth, "articular"), "C"),
                Rule("C", Cuff, Own.Has("shadowing"), Gives(Depth, "bursal")),
            ],
            Study(Right("supraspinatus", ("echo", "anechoic"), ("reangled", "persists"), ("shadowing", true))));
        Assert.Equal(Standing.Yields, outcome.Standing("C", Subject));
        Assert.Equal((TopicStatus.Published, "full"), outcome.Topic(Depth, Subject));
    }

    [Fact]
    public void Over_works_within_one_subject_only()
    {
        var outcome = Decide(
            [
                Rule("FULL", Cuff, Own.Is("reangled", "persists"), Gives(Depth, "full"), "BURSAL"),
                Rule("BURSAL", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "bursal")),
            ],
            Study(
                Right("supraspinatus", ("reangled", "persists"), ("echo", "fibrillar")),
                Left("supraspinatus", ("reangled", "resolves"), ("echo", "anechoic"))));
        Assert.Equal((TopicStatus.Published, "full"), outcome.Topic(Depth, Subject));
        Assert.Equal((TopicStatus.Published, "bursal"), outcome.Topic(Depth, "left supraspinatus"));
    }

    [Fact]
    public void A_superior_counts_only_where_its_own_scope_reaches()
    {
        var outcome = Decide(
            [
                Rule("FULL", Only("supraspinatus"), Own.Is("echo", "anechoic"), Gives(Depth, "full"), "BURSAL"),
                Rule("BURSAL", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "bursal")),
            ],
            Study(Right("supraspinatus", ("echo", "anechoic")), Right("infraspinatus", ("echo", "anechoic"))));
        Assert.Equal((TopicStatus.Published, "full"), outcome.Topic(Depth, Subject));
        Assert.Equal((TopicStatus.Published, "bursal"), outcome.Topic(Depth, "right infraspinatus"));
    }

    [Fact]
    public void Two_values_left_over_are_a_conflict_and_neither_is_published()
    {
        var outcome = Decide(
            [
                Rule("A", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "full")),
                Rule("B", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "bursal")),
                Rule("HOLD", Cuff, Own.Is("echo", "anechoic"), Holds(Depth)),
            ],
            Study(Right("supraspinatus", ("echo", "anechoic"))));
        Assert.Equal((TopicStatus.Conflict, null), outcome.Topic(Depth, Subject));
    }

    [Fact]
    public void The_same_value_twice_is_no_conflict()
    {
        var outcome = Decide(
            [
                Rule("A", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "full")),
                Rule("B", Cuff, Own.Has("shadowing"), Gives(Depth, "full")),
            ],
            Study(Right("supraspinatus", ("echo", "anechoic"), ("shadowing", true))));
        Assert.Equal((TopicStatus.Published, "full"), outcome.Topic(Depth, Subject));
    }

    [Fact]
    public void A_hold_withholds_what_would_have_been_published()
    {
        var outcome = Decide(
            [
                Rule("A", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "full")),
                Rule("HOLD", Cuff, Own.Is("reangled", "resolves"), Holds(Depth)),
            ],
            Study(Right("supraspinatus", ("echo", "anechoic"), ("reangled", "resolves"))));
        Assert.Equal((TopicStatus.Held, null), outcome.Topic(Depth, Subject));
        Assert.Equal(Standing.Stands, outcome.Standing("A", Subject));
    }

    [Fact]
    public void A_hold_that_yields_holds_nothing()
    {
        var outcome = Decide(
            [
                Rule("A", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "full"), "HOLD"),
                Rule("HOLD", Cuff, Own.Is("reangled", "resolves"), Holds(Depth)),
            ],
            Study(Right("supraspinatus", ("echo", "anechoic"), ("reangled", "resolves"))));
        Assert.Equal((TopicStatus.Published, "full"), outcome.Topic(Depth, Subject));
    }

    [Fact]
    public void A_rule_that_tests_a_topic_comes_after_it_whatever_the_ids_are()
    {
        var outcome = Decide(
            [
                Rule("A-LAST", Scope.Study, Any(Tendon, Own.Is(State, "thick")), Gives(Count, "one")),
                Rule("M-MIDDLE", Tendon, Beside("supraspinatus").Is(Depth, "full"), Gives(State, "thick")),
                Rule("Z-FIRST", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "full")),
            ],
            Study(Right("supraspinatus", ("echo", "anechoic")), Right("biceps")));
        Assert.Equal((TopicStatus.Published, "thick"), outcome.Topic(State, "right biceps"));
        Assert.Equal((TopicStatus.Published, "one"), outcome.Topic(Count, "study"));
    }

    [Fact]
    public void Unknown_superior_leaves_a_true_rule_and_its_topic_open()
    {
        var outcome = Decide(
            [
                Rule("FULL", Cuff, Own.Is("reangled", "persists"), Gives(Depth, "full"), "BURSAL"),
                Rule("BURSAL", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "bursal")),
            ],
            Study(Right("supraspinatus", ("echo", "anechoic"))));
        Assert.Equal(Standing.Unknown, outcome.Standing("FULL", Subject));
        Assert.Equal(Standing.Open, outcome.Standing("BURSAL", Subject));
        Assert.Equal((TopicStatus.Open, null), outcome.Topic(Depth, Subject));
    }

    [Fact]
    public void Unknown_hold_leaves_the_topic_open()
    {
        var outcome = Decide(
            [
                Rule("A", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "full")),
                Rule("HOLD", Cuff, Own.Is("reangled", "resolves"), Holds(Depth)),
            ],
            Study(Right("supraspinatus", ("echo", "anechoic"))));
        Assert.Equal((TopicStatus.Open, null), outcome.Topic(Depth, Subject));
    }

    [Fact]
    public void Unknown_rule_for_another_value_leaves_the_topic_open_and_one_for_the_same_value_does_not()
    {
        var study = Study(Right("supraspinatus", ("echo", "anechoic")));
        var sure = Rule("A", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "full"));
        var other = Decide([sure, Rule("B", Cuff, Own.Has("shadowing"), Gives(Depth, "bursal"))], study);
        var same = Decide([sure, Rule("B", Cuff, Own.Has("shadowing"), Gives(Depth, "full"))], study);
        Assert.Equal((TopicStatus.Open, null), other.Topic(Depth, Subject));
        Assert.Equal((TopicStatus.Published, "full"), same.Topic(Depth, Subject));
    }

    [Fact]
    public void Withdrawn_rule_takes_no_part_at_all()
    {
        var outcome = Decide(
            [
                Rule("A", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "full"), "B"),
                Rule("B", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "articular"), "C"),
                Rule("C", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "bursal")),
                Rule("HOLD", Cuff, Own.Is("echo", "anechoic"), Holds(Depth)),
            ],
            Study(Right("supraspinatus", ("echo", "anechoic"))), "B", "HOLD");
        Assert.Equal(["A", "C"], outcome.Rules.Select(r => r.Rule.Id));
        Assert.Equal((TopicStatus.Conflict, null), outcome.Topic(Depth, Subject));
    }

    [Fact]
    public void A_rule_is_true_or_false_of_the_study_once()
    {
        var outcome = Decide(
            [Rule("STUDY", Scope.Study, Facts.Is("suspected", "wood", "glass"))],
            Study(Right("supraspinatus"), Left("supraspinatus")).WithFacts(("suspected", "glass")));
        Assert.Equal(Truth.True, Assert.Single(outcome.Rules).Truth);
    }
}
