using System.Collections.Immutable;

namespace FindingRules.Workload;

/// <summary>
/// Rules of two to six comparisons, such that about one in twenty fires: the more comparisons, the easier each. A seed gives
/// the same rules in every run.
/// </summary>
public sealed class RuleDrawing(int seed)
{
    /// <summary>Of the rules that are written out before the benchmarks are compiled.</summary>
    public const int Seed = 1;

    private const double Firing = 0.05;
    private const double Sent = FactsDrawing.ShareSent;

    private readonly Random _random = new(seed);

    public ImmutableArray<RuleSketch> Make(int count) =>
        [.. Enumerable.Range(0, count).Select(i => new RuleSketch(i, i % WorkloadSize.Structures, Comparisons(_random.Next(2, 7))))];

    private ImmutableArray<Comparison> Comparisons(int count)
    {
        var findings = Enum.GetValues<FindingSort>().ToList();
        // A sixth comparison makes a stretch of one of the measures.
        if (count > findings.Count) findings.Add(findings[_random.Next(2)]);
        var left = Firing / Math.Pow(Sent, Math.Min(count, 5));
        var made = ImmutableArray.CreateBuilder<Comparison>();
        foreach (var finding in Shuffle(findings).Take(count))
        {
            var share = Math.Pow(left, 1.0 / (count - made.Count));
            var (comparison, actual) = Make(finding, made.Any(c => c.Finding == finding && c.Relation == Relation.AtLeast), share);
            left = Math.Min(1, left / actual);
            made.Add(comparison);
        }
        return made.ToImmutable();
    }

    private (Comparison Comparison, double Share) Make(FindingSort finding, bool isBelow, double share)
    {
        switch (finding)
        {
            case FindingSort.Echo: return Values(finding, WorkloadSize.Echoes, share);
            case FindingSort.State: return Values(finding, WorkloadSize.States, share);
            case FindingSort.Shadowing: return (new Comparison(finding, Relation.OneOf, 1 << _random.Next(2)), 0.5);
            default:
                var relation = isBelow || _random.Next(2) == 0 ? Relation.Below : Relation.AtLeast;
                var at = relation == Relation.Below ? share : 1 - share;
                // Limits are written in half millimetres.
                var halves = Math.Clamp((int)Math.Round(at * WorkloadSize.MostTenths / 5), 1, (WorkloadSize.MostTenths / 5) - 1);
                var below = halves * 5.0 / WorkloadSize.MostTenths;
                return (new Comparison(finding, relation, halves * 5), relation == Relation.Below ? below : 1 - below);
        }
    }

    private (Comparison Comparison, double Share) Values(FindingSort finding, int count, double share)
    {
        var chosen = Math.Clamp((int)Math.Round(share * count), 1, count - 1);
        var bits = Shuffle(Enumerable.Range(0, count)).Take(chosen).Aggregate(0, (mask, value) => mask | (1 << value));
        return (new Comparison(finding, Relation.OneOf, bits), chosen / (double)count);
    }

    private List<T> Shuffle<T>(IEnumerable<T> items)
    {
        var list = items.ToList();
        for (var i = list.Count - 1; i > 0; i--)
        {
            var j = _random.Next(i + 1);
            (list[i], list[j]) = (list[j], list[i]);
        }
        return list;
    }
}
