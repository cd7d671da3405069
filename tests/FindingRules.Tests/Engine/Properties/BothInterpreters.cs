using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reference;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Testing.Generators;
using Xunit;

namespace FindingRules.Tests.Engine.Properties;

/// <summary>Runs the network and the reference interpreter, and fails where they differ.</summary>
internal static class BothInterpreters
{
    public static Outcome Decide(Pack pack, Study study)
    {
        var expected = ReferenceInterpreter.Decide(pack, study);
        var actual = Evaluator.Decide(NetworkCompiler.Compile(pack), study);
        var differences = Differences(expected, actual);
        if (differences.Count > 0)
            Assert.Fail($"reference | network\n{string.Join('\n', differences)}\n\n{new Sample(pack, study)}");
        return actual;
    }

    /// <summary>One line for each part of the outcomes that differs, or for a difference in order.</summary>
    public static IReadOnlyList<string> Differences(Outcome expected, Outcome actual)
    {
        var differences = Compare(expected.Rules, actual.Rules, r => $"{r.Subject} {r.Rule}", Show)
            .Concat(Compare(expected.Topics, actual.Topics, t => $"{t.Subject} {t.Topic}", Show)).ToList();
        if (differences.Count == 0 && !expected.Rules.SequenceEqual(actual.Rules)) differences.Add("the rules are in another order");
        if (differences.Count == 0 && !expected.Topics.SequenceEqual(actual.Topics)) differences.Add("the topics are in another order");
        return differences;
    }

    private static IEnumerable<string> Compare<T>(
        IReadOnlyList<T> expected, IReadOnlyList<T> actual, Func<T, string> key, Func<T, string> show)
    {
        var left = expected.ToLookup(key, show, StringComparer.Ordinal);
        var right = actual.ToLookup(key, show, StringComparer.Ordinal);
        return from name in left.Concat(right).Select(g => g.Key).Distinct().Order(StringComparer.Ordinal)
               let before = string.Join(" + ", left[name].DefaultIfEmpty("-"))
               let after = string.Join(" + ", right[name].DefaultIfEmpty("-"))
               where before != after
               select $"{name}: {before} | {after}";
    }

    private static string Show(RuleOutcome rule) => $"{rule.Truth}, widened {rule.Widened}, {rule.Standing}";

    private static string Show(TopicOutcome topic) => $"{topic.Status} {topic.Value}";
}
