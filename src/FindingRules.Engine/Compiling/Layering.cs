using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;

namespace FindingRules.Engine.Compiling;

/// <summary>
/// Layers of rules and topics: a topic comes after every rule that answers or holds it, a rule after every topic that
/// it tests and every rule that it yields to. INVARIANT: there is no cycle; the pack reader refuses one.
/// </summary>
internal sealed class Layering
{
    private readonly Dictionary<object, int> _layers = [];

    public Layering(ImmutableArray<Rule> rules)
    {
        var byId = rules.ToDictionary(r => r.Id, StringComparer.Ordinal);
        var after = new Dictionary<object, List<object>>();
        var waits = new Dictionary<object, int>();
        void Edge(object first, object then)
        {
            if (!after.TryGetValue(first, out var list)) after[first] = list = [];
            list.Add(then);
            waits[then] = waits.GetValueOrDefault(then) + 1;
        }

        foreach (var rule in rules)
        {
            _layers[rule] = 0;
            foreach (var topic in TestedTopics.Of(rule.Condition)) Edge(topic, rule);
            foreach (var given in rule.Topics) Edge(rule, given.Topic);
            foreach (var held in rule.Holds) Edge(rule, held.Topic);
            foreach (var inferior in rule.Over)
                if (byId.TryGetValue(inferior, out var other))
                    Edge(rule, other);
        }
        foreach (var topic in after.Keys.Concat(waits.Keys).OfType<Topic>()) _layers[topic] = 0;
        Spread(after, waits);
    }

    public int Count => _layers.Count == 0 ? 0 : _layers.Values.Max() + 1;

    public int this[Rule rule] => _layers[rule];

    /// <summary>A topic that no rule answers, holds or tests is in the first layer.</summary>
    public int this[Topic topic] => _layers.GetValueOrDefault(topic);

    private void Spread(Dictionary<object, List<object>> after, Dictionary<object, int> waits)
    {
        var ready = new Queue<object>(_layers.Keys.Where(k => !waits.ContainsKey(k)));
        while (ready.TryDequeue(out var done))
        {
            foreach (var next in after.GetValueOrDefault(done) ?? [])
            {
                // A topic may close in the layer of its last rule: rules of a layer are decided before its topics.
                var least = next is Topic ? _layers[done] : _layers[done] + 1;
                _layers[next] = Math.Max(_layers[next], least);
                if (--waits[next] == 0) ready.Enqueue(next);
            }
        }
        if (waits.Values.Any(w => w > 0)) throw new InvalidOperationException("The rules of a pack must not depend on themselves.");
    }
}

/// <summary>The topics that a condition tests.</summary>
internal static class TestedTopics
{
    public static IEnumerable<Topic> Of(Condition condition) => condition switch
    {
        AllOf all => all.Parts.SelectMany(Of),
        AnyOf any => any.Parts.SelectMany(Of),
        Negation negation => Of(negation.Part),
        Quantified quantified => Of(quantified.Where),
        TopicStatement topic => [topic.Topic],
        _ => [],
    };
}
