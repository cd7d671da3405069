using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using Xunit;
using static FindingRules.Tests.Engine.Properties.Settled.Saying;
using static FindingRules.Tests.Engine.Properties.Settled.Shoulder;

namespace FindingRules.Tests.Engine.Properties.Settled;

/// <summary>Truth of a topic's value, tested by rules of a later layer.</summary>
public sealed class TopicTruthTests
{
    private static readonly Rule _full = Rule("FULL", Cuff, Own.Is("echo", "anechoic"), Gives(Depth, "full"));
    private static readonly Rule _bursal = Rule("BURSAL", Cuff, Own.Has("shadowing"), Gives(Depth, "bursal"));
    private static readonly Rule _hold = Rule("HOLD", Cuff, Own.Is("reangled", "resolves"), Holds(Depth));

    [Fact]
    public void True_if_published_and_false_if_another_value_is_published()
    {
        var subject = Right("supraspinatus", ("echo", "anechoic"), ("shadowing", false), ("reangled", "persists"));
        Assert.Equal((Truth.True, Truth.False), Asked(subject));
    }

    [Fact]
    public void False_if_no_rule_can_answer_the_topic()
    {
        var subject = Right("supraspinatus", ("echo", "fibrillar"), ("shadowing", false), ("reangled", "persists"));
        Assert.Equal((Truth.False, Truth.False), Asked(subject));
    }

    [Fact]
    public void False_if_all_rules_for_the_value_are_false_though_the_topic_is_open()
    {
        var subject = Right("supraspinatus", ("echo", "fibrillar"), ("reangled", "persists"));
        Assert.Equal((Truth.False, Truth.Unknown), Asked(subject));
    }

    [Fact]
    public void Unknown_while_it_is_held()
    {
        var subject = Right("supraspinatus", ("echo", "anechoic"), ("shadowing", false), ("reangled", "resolves"));
        Assert.Equal((Truth.Unknown, Truth.False), Asked(subject));
    }

    [Fact]
    public void Unknown_where_two_values_are_in_conflict_and_false_for_a_third()
    {
        var outcome = Decide(
            [_full, _bursal, Rule("ASKS-FULL", Cuff, Own.Is(Depth, "full")), Rule("ASKS-ARTICULAR", Cuff, Own.Is(Depth, "articular"))],
            Study(Right("supraspinatus", ("echo", "anechoic"), ("shadowing", true))));
        Assert.Equal(TopicStatus.Conflict, outcome.Topic(Depth, "right supraspinatus").Status);
        Assert.Equal(Truth.Unknown, outcome.Truth("ASKS-FULL", "right supraspinatus"));
        Assert.Equal(Truth.False, outcome.Truth("ASKS-ARTICULAR", "right supraspinatus"));
    }

    [Fact]
    public void Unknown_of_a_structure_that_was_not_examined()
    {
        var outcome = Decide(
            [_full, Rule("ASKS", Only("biceps"), Beside("supraspinatus").Is(Depth, "full"))],
            Study(Right("biceps", ("echo", "fibrillar"))));
        Assert.Equal(Truth.Unknown, outcome.Truth("ASKS", "right biceps"));
    }

    [Fact]
    public void A_topic_per_structure_is_the_same_for_all_its_lesions()
    {
        var outcome = Decide(
            [
                Rule("THICK", Tendon, Own.The("thickness").Above(Mm(8)), Gives(State, "thick")),
                Rule("ASKS", Cuff, Own.Is(State, "thick")),
            ],
            Study(Right("supraspinatus").Lesion("L1", ("thickness", 9)).Lesion("L2", ("thickness", 3))));
        Assert.Equal((TopicStatus.Published, "thick"), outcome.Topic(State, "right supraspinatus"));
        Assert.Equal(Truth.True, outcome.Truth("ASKS", "right supraspinatus lesion L2"));
    }

    private static (Truth Full, Truth Bursal) Asked(StudySubject subject)
    {
        var outcome = Decide(
            [_full, _bursal, _hold, Rule("ASKS-FULL", Cuff, Own.Is(Depth, "full")), Rule("ASKS-BURSAL", Cuff, Own.Is(Depth, "bursal"))],
            Study(subject));
        return (outcome.Truth("ASKS-FULL", "right supraspinatus"), outcome.Truth("ASKS-BURSAL", "right supraspinatus"));
    }
}
