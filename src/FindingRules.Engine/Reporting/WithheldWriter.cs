using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Readings;

namespace FindingRules.Engine.Reporting;

/// <summary>Topics that have an answer which is not given: held until something is checked, or contradictory.</summary>
internal static class WithheldWriter
{
    public static ImmutableArray<WithheldTopic> Held(Decided decided)
    {
        var held = ImmutableArray.CreateBuilder<WithheldTopic>();
        foreach (var topic in decided.Topics)
            if (topic.State.Status == TopicStatus.Held)
                held.Add(Held(decided, topic));
        return held.DrainToImmutable();
    }

    public static ImmutableArray<ConflictingTopic> Conflicts(Decided decided)
    {
        var conflicts = ImmutableArray.CreateBuilder<ConflictingTopic>();
        foreach (var topic in decided.Topics)
            if (topic.State.Status == TopicStatus.Conflict)
                conflicts.Add(Conflict(decided, topic));
        return conflicts.DrainToImmutable();
    }

    private static WithheldTopic Held(Decided decided, TopicAt topic)
    {
        var (entry, holders) = (topic.Entry, Standing(topic, topic.Entry.Holders));
        return new WithheldTopic(
            entry.Topic.Name, topic.Subject,
            [
                .. entry.Givers.Where(g => Standing(topic, [g.Rule]).Count > 0).Select(g => entry.Topic.Values[g.Value].Name).Distinct(),
            ],
            [.. holders.Select(r => r.Rule.Because).Distinct()], [.. holders.Select(r => r.Reference)], decided.EvidenceOf(holders));
    }

    private static ConflictingTopic Conflict(Decided decided, TopicAt topic) => new(
        topic.Entry.Topic.Name, topic.Subject,
        [
            .. topic.Entry.Givers.GroupBy(g => g.Value).OrderBy(g => g.Key)
                .Select(g => (Value: g.Key, Rules: Standing(topic, g.Select(x => x.Rule))))
                .Where(g => g.Rules.Count > 0)
                .Select(g => new ConflictingValue(
                    topic.Entry.Topic.Values[g.Value].Name, [.. g.Rules.Select(r => r.Reference)], decided.EvidenceOf(g.Rules))),
        ]);

    private static List<RuleAt> Standing(TopicAt topic, IEnumerable<int> positions) =>
    [
        .. positions.Distinct().Select(p => new RuleAt(topic.Examination, topic.Index, p))
            .Where(r => r.State.Standing == Evaluating.Standing.Stands),
    ];
}
