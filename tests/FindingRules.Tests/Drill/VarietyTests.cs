using FindingRules.Drill;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Drill;

/// <summary>A session goes about the body and the sorts of questions, and its answers cannot be guessed from their form.</summary>
public sealed class VarietyTests
{
    private const int Questions = 15;
    private static readonly DrillDeck Deck = DrillDeck.Of(PackFolder.Load(Repository.PathOf("rules", "msk-ultrasound")).Pack!);

    private static readonly ulong[] Some = [1, 2, 3, 7, 11, 2026];

    public static TheoryData<ulong> Seeds() => [.. Some];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_session_is_of_many_regions_and_every_sort_and_asks_nothing_twice(ulong seed)
    {
        var drawn = Deck.Draw(seed, Questions).Select(q => Deck.Find(q.Id, new())!).ToList();
        Assert.Equal(Questions, drawn.Select(m => m.Question.Key).Distinct().Count());
        Assert.InRange(drawn.SelectMany(m => m.Spot.Case.Study.Subjects).Select(s => s.Structure.Region).Distinct().Count(), 5, 20);
        Assert.Equal(Enum.GetValues<DrillSort>(), drawn.Select(m => m.Question.Sort).Distinct().Order());
        Assert.InRange(drawn.CountBy(m => m.Spot.Theme).Max(t => t.Value), 1, 2);
    }

    [Fact]
    public void That_nothing_can_be_said_yet_is_right_now_and_then()
    {
        var impressions = Some.SelectMany(s => Deck.Draw(s, Questions)).Select(q => Deck.Find(q.Id, new())!)
            .Where(m => m.Question.Sort == DrillSort.Impression).ToList();
        Assert.InRange(impressions.Count(m => m.Spot.Right is NotYet), impressions.Count / 10, impressions.Count / 2);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Where_nothing_can_be_said_yet_the_others_are_answers_of_that_topic(ulong seed)
    {
        foreach (var made in Deck.Draw(seed, Questions).Select(q => Deck.Find(q.Id, new())!))
            if (made.Spot.Right is NotYet not)
                Assert.All(made.Claims.OfType<Say>(), say => Assert.Equal((not.Topic, not.Subject), (say.Topic, say.Subject)));
    }
}
