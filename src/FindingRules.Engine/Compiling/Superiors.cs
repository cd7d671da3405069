using System.Collections.Immutable;
using FindingRules.Model.Packs;

namespace FindingRules.Engine.Compiling;

/// <summary>For each rule the ids of the rules that it yields to, over several steps too.</summary>
internal static class Superiors
{
    public static Dictionary<string, ImmutableArray<string>> Of(ImmutableArray<Rule> rules)
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
        if (direct[start].Count == 0) return [];
        var reached = new SortedSet<string>(StringComparer.Ordinal);
        var open = new Stack<string>(direct[start]);
        while (open.TryPop(out var next))
            if (reached.Add(next))
                foreach (var further in direct[next])
                    open.Push(further);
        return [.. reached];
    }
}
