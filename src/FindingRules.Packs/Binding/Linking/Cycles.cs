namespace FindingRules.Packs.Binding.Linking;

/// <summary>Finds circles among names, without recursion: a pack may chain thousands of rules.</summary>
internal static class Cycles
{
    /// <summary>
    /// One path for each circle, begun at its least name; circles that share a name are shown as one. The same names
    /// give the same paths in whatever order they come.
    /// </summary>
    public static List<List<string>> Find(IEnumerable<string> names, Func<string, IEnumerable<string>> next)
    {
        var edges = names.Distinct(StringComparer.Ordinal).ToDictionary(
            n => n, n => next(n).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList(), StringComparer.Ordinal);
        var paths = new List<List<string>>();
        while (true)
        {
            Trim(edges);
            if (edges.Count == 0) return paths;
            var path = Walk(edges.Keys.Min(StringComparer.Ordinal)!, edges);
            paths.Add(path);
            foreach (var name in path) edges.Remove(name);
        }
    }

    /// <summary>As a message prints it, closed: `a` → `b` → `a`.</summary>
    public static string Show(List<string> path) => string.Join(" → ", path.Append(path[0]).Select(n => $"`{n}`"));

    // Whatever leads to nothing that is left is in no circle.
    private static void Trim(Dictionary<string, List<string>> edges)
    {
        var incoming = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        foreach (var (name, targets) in edges)
        {
            targets.RemoveAll(t => !edges.ContainsKey(t));
            foreach (var target in targets)
            {
                if (!incoming.TryGetValue(target, out var sources)) incoming[target] = sources = [];
                sources.Add(name);
            }
        }
        var left = edges.ToDictionary(e => e.Key, e => e.Value.Count, StringComparer.Ordinal);
        var ends = new Queue<string>(left.Where(e => e.Value == 0).Select(e => e.Key));
        while (ends.TryDequeue(out var end))
        {
            edges.Remove(end);
            foreach (var source in incoming.GetValueOrDefault(end) ?? [])
                if (--left[source] == 0)
                    ends.Enqueue(source);
        }
        foreach (var targets in edges.Values) targets.RemoveAll(t => !edges.ContainsKey(t));
    }

    // INVARIANT: after trimming every name leads on, so a walk must come back to where it was.
    private static List<string> Walk(string from, Dictionary<string, List<string>> edges)
    {
        var path = new List<string>();
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        var at = from;
        while (places.TryAdd(at, path.Count))
        {
            path.Add(at);
            at = edges[at][0];
        }
        var circle = path[places[at]..];
        var least = circle.IndexOf(circle.Min(StringComparer.Ordinal)!);
        return [.. circle[least..], .. circle[..least]];
    }
}
