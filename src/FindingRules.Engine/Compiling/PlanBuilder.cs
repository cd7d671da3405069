using System.Collections.Immutable;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Compiling.Planes;
using FindingRules.Engine.Normalising;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Compiling;

internal sealed record CompiledRule(Node Condition, ImmutableArray<int>? OwnSlots, RuleClauses Clauses);

/// <summary>Gathers, for each structure and the study, the rules and topics that speak of it.</summary>
internal sealed class PlanBuilder
{
    private readonly Layering _layers;
    private readonly IReadOnlyDictionary<Topic, int> _topicNumbers;
    private readonly IReadOnlyDictionary<Rule, CompiledRule> _compiled;
    private readonly Dictionary<string, ImmutableArray<string>> _superiors;
    private readonly Dictionary<Structure, Speaking> _ofStructures = [];
    private readonly Speaking _ofStudy = new();
    private readonly Dictionary<Speaking, PlanRules> _known = new(Speaking.ByContent);

    public PlanBuilder(
        ImmutableArray<Rule> rules, ImmutableArray<Topic> topics, Layering layers,
        IReadOnlyDictionary<Topic, int> topicNumbers, IReadOnlyDictionary<Rule, CompiledRule> compiled)
    {
        (_layers, _topicNumbers, _compiled, _superiors) = (layers, topicNumbers, compiled, Superiors.Of(rules));
        foreach (var rule in rules.OrderBy(r => r.Id, StringComparer.Ordinal))
            foreach (var speaking in SpeakingOf(rule.Scope))
                speaking.Rules.Add(rule);
        foreach (var topic in topics)
            foreach (var speaking in SpeakingOf(topic.Scope))
                speaking.Topics.Add(topic);
    }

    public StructurePlan OfStudy(Vocabulary vocabulary, FindingSlots slots) => new(
        null, vocabulary.Structures.Count, RulesOf(_ofStudy), Findings(vocabulary.StudyFacts.Values, slots), slots.StudyCount);

    public IEnumerable<StructurePlan> OfStructures(Vocabulary vocabulary, FindingSlots slots) => vocabulary.Structures.Values.Select(
        (structure, number) => new StructurePlan(
            structure, number, RulesOf(_ofStructures.GetValueOrDefault(structure) ?? new Speaking()),
            Findings(structure.Kind.Findings.Values, slots), slots.CountOf(structure.Kind)));

    private IEnumerable<Speaking> SpeakingOf(Scope scope)
    {
        if (scope.IsStudy) return [_ofStudy];
        foreach (var structure in scope.Structures) _ofStructures.TryAdd(structure, new Speaking());
        return scope.Structures.Select(s => _ofStructures[s]);
    }

    private PlanRules RulesOf(Speaking speaking)
    {
        if (!_known.TryGetValue(speaking, out var rules)) _known.Add(speaking, rules = Build(speaking));
        return rules;
    }

    private PlanRules Build(Speaking speaking)
    {
        var positions = speaking.Rules.Select((rule, i) => (rule.Id, i)).ToDictionary(p => p.Id, p => p.i, StringComparer.Ordinal);
        ImmutableArray<RuleEntry> entries =
        [
            .. speaking.Rules.Select(rule => new RuleEntry(
                rule, _compiled[rule].Condition, _layers[rule],
                [.. _superiors[rule.Id].Where(positions.ContainsKey).Select(s => positions[s])],
                _compiled[rule].OwnSlots)),
        ];
        ImmutableArray<int> inLayerOrder = [.. Enumerable.Range(0, entries.Length).OrderBy(i => entries[i].Layer)];
        var topics = TopicsOf(speaking);
        return new PlanRules(
            entries, topics, inLayerOrder, [.. entries.Select(e => new RuleStep(e.Layer, e.Superiors.Length > 0))],
            AnswersOf(entries.Length, topics),
            PlaneCompiler.Compile(entries, inLayerOrder, rule => _compiled[rule].Clauses));
    }

    private ImmutableArray<TopicEntry> TopicsOf(Speaking speaking)
    {
        var givers = speaking.Topics.ToDictionary(t => t, _ => new List<(int, int)>());
        var holders = speaking.Topics.ToDictionary(t => t, _ => new List<int>());
        for (var position = 0; position < speaking.Rules.Count; position++)
        {
            foreach (var given in speaking.Rules[position].Topics)
                if (givers.TryGetValue(given.Topic, out var giving))
                    giving.Add((position, given.Topic.Values.IndexOf(given.Value)));
            foreach (var topic in speaking.Rules[position].Holds.Select(h => h.Topic).Distinct())
                if (holders.TryGetValue(topic, out var holding))
                    holding.Add(position);
        }
        return
        [
            .. speaking.Topics.Select(t => new TopicEntry(t, _topicNumbers[t], _layers[t], [.. givers[t]], [.. holders[t]])),
        ];
    }

    private static RuleAnswers AnswersOf(int ruleCount, ImmutableArray<TopicEntry> topics)
    {
        var ofRule = new List<RuleAnswer>?[ruleCount];
        for (var topic = 0; topic < topics.Length; topic++)
        {
            foreach (var (rule, value) in topics[topic].Givers) (ofRule[rule] ??= []).Add(new RuleAnswer(topic, 1UL << value));
            foreach (var rule in topics[topic].Holders) (ofRule[rule] ??= []).Add(new RuleAnswer(topic, 0));
        }
        var first = new int[ruleCount + 1];
        for (var i = 0; i < ruleCount; i++) first[i + 1] = first[i] + (ofRule[i]?.Count ?? 0);
        return new RuleAnswers([.. first], [.. ofRule.SelectMany(answers => answers ?? [])]);
    }

    private static ImmutableArray<PlanFinding> Findings(IEnumerable<Finding> findings, FindingSlots slots) =>
        [.. findings.Select(f => new PlanFinding(f, slots[f], NormalFilling.NormalOf(f.Type)))];
}

/// <summary>The rules, in order of id, and topics that speak of one structure.</summary>
internal sealed class Speaking
{
    public List<Rule> Rules { get; } = [];

    public List<Topic> Topics { get; } = [];

    public static IEqualityComparer<Speaking> ByContent { get; } = EqualityComparer<Speaking>.Create(
        (a, b) => a!.Rules.SequenceEqual(b!.Rules) && a.Topics.SequenceEqual(b.Topics),
        s => HashCode.Combine(s.Rules.Count, s.Rules.FirstOrDefault(), s.Rules.LastOrDefault(), s.Topics.Count, s.Topics.FirstOrDefault()));
}
