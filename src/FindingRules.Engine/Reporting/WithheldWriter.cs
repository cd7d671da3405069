using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Readings;

namespace FindingRules.Engine.Reporting;

/// <summary>Topics that have an answer which is not given: held until something is checked, or contradictory.</summary>
internal static class WithheldWriter
{
    public static ImmutableArray<WithheldTopic> Held(Decided decided) =>
    [
        .. Topics(decided, TopicStatus.Held).Select(t =>
        {
            var holders = Rules(decided, t.Index, t.Entry.Holders);
            var givers = Rules(decided, t.Index, t.Entry.Givers.Select(g => g.Rule));
            return new WithheldTopic(
                t.Entry.Topic.Name, decided.Examination[t.Index].Subject.Key,
                [
                    .. t.Entry.Givers.Where(g => givers.Any(r => r.Position == g.Rule))
                        .Select(g => t.Entry.Topic.Values[g.Value].Name).Distinct(),
                ],
                [.. holders.Select(r => r.Rule.Because).Distinct()],
                [.. holders.Select(r => r.Reference)], EvidenceWriter.Of(holders));
        }),
    ];

    public static ImmutableArray<ConflictingTopic> Conflicts(Decided decided) =>
    [
        .. Topics(decided, TopicStatus.Conflict).Select(t => new ConflictingTopic(
            t.Entry.Topic.Name, decided.Examination[t.Index].Subject.Key,
            [
                .. t.Entry.Givers.GroupBy(g => g.Value).OrderBy(g => g.Key)
                    .Select(g => (Value: g.Key, Rules: Rules(decided, t.Index, g.Select(x => x.Rule))))
                    .Where(g => g.Rules.Count > 0)
                    .Select(g => new ConflictingValue(
                        t.Entry.Topic.Values[g.Value].Name, [.. g.Rules.Select(r => r.Reference)], EvidenceWriter.Of(g.Rules))),
            ])),
    ];

    private static IEnumerable<(int Index, TopicEntry Entry)> Topics(Decided decided, TopicStatus status) =>
        from index in decided.Instances
        let instance = decided.Examination[index]
        from position in Enumerable.Range(0, instance.Topics.Length)
        where instance.Topics[position] is { IsDecided: true } state && state.Status == status
        select (index, instance.Plan.Topics[position]);

    private static List<RuleAt> Rules(Decided decided, int index, IEnumerable<int> positions) =>
    [
        .. positions.Distinct().Select(p => new RuleAt(decided.Examination, index, p)).Where(r => r.State.Standing == Standing.Stands),
    ];
}
