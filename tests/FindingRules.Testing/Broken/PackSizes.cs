using System.Text;
using FindingRules.Model.Packs;

namespace FindingRules.Testing.Broken;

/// <summary>Files and rules beyond what a pack may hold.</summary>
internal static class PackSizes
{
    public static IEnumerable<BrokenPack> TooDeep()
    {
        foreach (var depth in new[] { 33, 200, 30_000, 100_000 })
            foreach (var (open, close) in new[] { ("[", "]"), ("{a: ", "}"), ("[", "") })
                yield return BrokenPack.Of($"{depth} {open}", "cautions.yaml", $"cautions: {Repeat(open, depth)}{Repeat(close, depth)}\n...\n");
        foreach (var depth in new[] { 40, 1_000 })
        {
            yield return BrokenPack.Of($"{depth} indents", "cautions.yaml", string.Concat(Enumerable.Range(0, depth).Select(i => $"{new string(' ', i)}a:\n")) + "...\n");
            yield return BrokenPack.Of($"{depth} items in items", "cautions.yaml", $"cautions:\n  {Repeat("- ", depth)}x\n...\n");
            yield return BrokenPack.Of($"{depth} questions", "cautions.yaml", $"{Repeat("? ", depth)}x\n...\n");
        }
        foreach (var depth in new[] { 65, 500, 900 })
        {
            yield return Rule($"{depth} brackets", $"{Repeat("(", depth)}fluid reaches bursal{Repeat(")", depth)} → bursal-sided");
            yield return Rule($"{depth} open brackets", $"{Repeat("(", depth)}fluid reaches bursal → bursal-sided");
            yield return Rule($"{depth} nots", $"{Repeat("not ", Math.Min(depth, 490))}fluid reaches bursal →");
        }
    }

    public static IEnumerable<BrokenPack> TooLarge()
    {
        var limits = LoadLimits.Default;
        var padding = $"# {new string('x', limits.FileBytes)}\n";
        foreach (var path in new[] { "pack.yaml", "rules.yaml" })
        {
            yield return BrokenPack.Of("more bytes than a file may have", path, BrokenPack.Texts[path] + padding);
            yield return BrokenPack.Of("nothing but brackets", path, new string('[', limits.FileBytes + 1));
        }
        yield return Rule("more characters than a rule may have", $"fluid reaches bursal{new string(' ', limits.RuleCharacters)}→ bursal-sided");
        yield return Rule("more operators than a rule may have", $"thickness above 1 mm{Repeat("+1 mm", limits.RuleOperators + 1)} → bursal-sided");
        yield return Rule("a number of 2,000 digits", $"thickness above {new string('9', 1_900)} mm → bursal-sided");
        yield return Rule("a name of 1,900 letters", $"{new string('a', 1_900)} → bursal-sided");
        yield return BrokenPack.Of("a name of 100,000 letters", "cautions.yaml", $"cautions:\n  {new string('a', 100_000)}: {{ says: x, source: [trade] }}\n...\n");
        yield return BrokenPack.Of("100,000 entries", "cautions.yaml", $"cautions:\n{string.Concat(Enumerable.Range(0, 100_000).Select(i => $"  a{i}: 1\n"))}...\n");
    }

    private static BrokenPack Rule(string name, string rule) =>
        new Replacement("rules.yaml", "fluid reaches bursal → bursal-sided", rule).Apply() with { Name = $"rules.yaml: {name}" };

    private static string Repeat(string what, int times) => new StringBuilder().Insert(0, what, times).ToString();
}
