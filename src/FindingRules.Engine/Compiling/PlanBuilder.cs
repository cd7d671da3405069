using System.Collections.Immutable;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Compiling;

internal sealed record CompiledRule(Node Condition, ImmutableArray<int>? OwnSlots);

/// <summary>Gathers, for one structure or the study, the rules and topics that speak of it.</summary>
internal sealed class PlanBuilder(
    ImmutableArray<Rule> rules, ImmutableArray<Topic> topics, Layering layers,
    IReadOnlyDictionary<Topic, int> topicNumbers, IReadOnlyDictionary<Rule, CompiledRule> compiled)
{
    private readonly Dictionary<string, ImmutableArray<string>> _superiors = SuperiorsOf(rules);

    public StructurePlan Build(Structure? structure, int slotCount)
    {
        ImmutableArray<Rule> here = [.. rules.Where(r => r.Scope.Covers(structure)).OrderBy(r => r.Id, StringComparer.Ordinal)];
        var positions = here.Select((rule, i) => (rule.Id, i)).ToDictionary(p => p.Id, p => p.i, StringComparer.Ordinal);
        var entries = here.Select(rule => new RuleEntry(
            rule, compiled[rule].Condition, layers[rule],
            [.. _superiors[rule.Id].Where(positions.ContainsKey).Select(s => positions[s])],
            compiled[rule].OwnSlots));
        var topicEntries = topics.Where(t => t.Scope.Covers(structure)).Select(topic => new TopicEntry(
            topic, topicNumbers[topic], layers[topic],
            [.. here.SelectMany(r => r.Topics.Where(c => c.Topic == topic).Select(c => (positions[r.Id], topic.Values.IndexOf(c.Value))))],
            [.. here.Where(r => r.Holds.Any(h => h.Topic == topic)).Select(r => positions[r.Id])]));
        return new StructurePlan(structure, [.. entries], [.. topicEntries], slotCount);
    }

    private static Dictionary<string, ImmutableArray<string>> SuperiorsOf(ImmutableArray<Rule> rules)
    {
        var direct = rules.ToDictionary(r => r.Id, _ => new List<string>(), StringComparer.Ordinal);
        foreach (var rule in rules)
            foreach (var inferior in rule.Over)
                if (direct.TryGetValue(inferior, out var above))
                    above.Add(rule.Id);
        return rules.ToDictionary(r => r.Id, r => Reach(r.Id, direct), StringComparer.Ordinal);
    }

    private static ImmutableArray<string> Reach(string start, Dictionary<string, List<string>> direct)
    {
        var reached = new SortedSet<string>(StringComparer.Ordinal);
        var open = new Stack<string>(direct[start]);
        while (open.TryPop(out var next))
            if (reached.Add(next))
                foreach (var further in direct[next])
                    open.Push(further);
        return [.. reached];
    }
}
