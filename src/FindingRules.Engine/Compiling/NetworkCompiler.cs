using System.Collections.Immutable;
using FindingRules.Engine.Compiling.Planes;
using FindingRules.Model.Packs;

namespace FindingRules.Engine.Compiling;

/// <summary>A bound pack in, a network out.</summary>
public static class NetworkCompiler
{
    public static RuleNetwork Compile(Pack pack)
    {
        ImmutableArray<Rule> rules = [.. pack.Rules.Where(pack.IsInForce)];
        ImmutableArray<Topic> topics = [.. pack.Symbols.Topics.Values];
        var layers = new Layering(rules);
        var slots = new FindingSlots(pack.Vocabulary);
        var numbers = topics.Select((topic, i) => (topic, i)).ToDictionary(t => t.topic, t => t.i);
        var nodes = new NodeCompiler(slots, numbers);
        var compiled = rules.ToDictionary(
            r => r, r => new CompiledRule(nodes.Compile(r.Condition), OwnSlots.Of(r, slots), ClauseCompiler.Compile(r, slots)));
        var derived = pack.Symbols.DerivedMeasures.Values.ToImmutableDictionary(m => m, m => nodes.Compile(m.Is));
        var before = rules.SelectMany(r => r.Conclusions).OfType<ProbabilityConclusion>()
            .ToImmutableDictionary(c => c, c => nodes.Compile(c.Before));
        var done = pack.Symbols.NextSteps.Values.Where(s => s.Done is not null).ToImmutableDictionary(s => s, s => nodes.Compile(s.Done!));
        var plans = new PlanBuilder(rules, topics, layers, numbers, compiled);
        return new RuleNetwork(
            pack, slots, plans.OfStudy(pack.Vocabulary, slots), [.. plans.OfStructures(pack.Vocabulary, slots)],
            derived, before, done, layers.Count, nodes.Count);
    }
}
