using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;

namespace FindingRules.Packs.Binding.Linking;

/// <summary>
/// Rules must fall into layers: whoever answers or holds a topic comes before the topic, the topic before whoever tests
/// it, and a rule before those that yield to it.
/// </summary>
internal static class LayerChecks
{
    public static void Check(IReadOnlyCollection<Rule> inForce, BindingContext context)
    {
        var byId = inForce.ToDictionary(r => r.Id, StringComparer.Ordinal);
        var concluders = Concluders(inForce);
        var superiors = Superiors(inForce, byId);
        var names = inForce.Select(r => r.Id).Concat(concluders.Keys);
        foreach (var path in Cycles.Find(names, Before))
        {
            // A circle of rules alone is one of `over`, and said there.
            if (path.All(byId.ContainsKey)) continue;
            path.Reverse(1, path.Count - 1);
            context.Messages.Add(LinkMessages.LayerCycle(byId[path.First(byId.ContainsKey)].Condition.Location, Cycles.Show(path)));
        }

        // What must be decided before this one.
        IEnumerable<string> Before(string name) => byId.TryGetValue(name, out var rule)
            ? TestedTopics.In(rule.Condition).Where(concluders.ContainsKey).Concat(superiors.GetValueOrDefault(name) ?? [])
            : concluders[name];
    }

    private static Dictionary<string, List<string>> Concluders(IEnumerable<Rule> rules)
    {
        var concluders = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        foreach (var rule in rules)
            foreach (var topic in rule.Topics.Select(t => t.Topic).Concat(rule.Holds.Select(h => h.Topic)))
            {
                if (!concluders.TryGetValue(topic.Name, out var list)) concluders[topic.Name] = list = [];
                list.Add(rule.Id);
            }
        return concluders;
    }

    private static Dictionary<string, List<string>> Superiors(IEnumerable<Rule> rules, Dictionary<string, Rule> byId)
    {
        var superiors = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        foreach (var rule in rules)
            foreach (var inferior in rule.Over.Where(byId.ContainsKey))
            {
                if (!superiors.TryGetValue(inferior, out var list)) superiors[inferior] = list = [];
                list.Add(rule.Id);
            }
        return superiors;
    }
}
