using System.Collections.Immutable;
using FindingRules.Workload;

namespace FindingRules.Benchmarks.Peers;

/// <summary>Each rule a tree of functions, as small interpreters are often written.</summary>
internal static class Closures
{
    private delegate bool Test(in SiteFacts site);

    public static Firing Compile(ImmutableArray<RuleSketch> rules)
    {
        var all = rules.Select(r => (r.Number, r.Structure, Test: r.Comparisons.Select(Of).Aggregate(And))).ToArray();
        return (in study, fired) =>
        {
            var count = 0;
            foreach (var (number, structure, test) in all)
                if (test(study[structure]))
                    fired[count++] = number;
            return count;
        };
    }

    private static Test And(Test left, Test right) => (in site) => left(site) && right(site);

    private static Test Of(Comparison comparison)
    {
        var (limit, bits) = (comparison.Operand / 10.0, comparison.Operand);
        return (comparison.Finding, comparison.Relation) switch
        {
            (FindingSort.Thickness, Relation.AtLeast) => (in s) => s.Thickness >= limit,
            (FindingSort.Thickness, _) => (in s) => s.Thickness < limit,
            (FindingSort.Length, Relation.AtLeast) => (in s) => s.Length >= limit,
            (FindingSort.Length, _) => (in s) => s.Length < limit,
            (FindingSort.Echo, _) => (in s) => s.Echo >= 0 && (bits & (1 << s.Echo)) != 0,
            (FindingSort.State, _) => (in s) => s.State >= 0 && (bits & (1 << s.State)) != 0,
            _ => (in s) => s.Shadowing >= 0 && (bits & (1 << s.Shadowing)) != 0,
        };
    }
}
