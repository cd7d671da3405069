using System.Collections.Immutable;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Readings;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Reporting;

/// <summary>Rules that a measurement a little off would have decided otherwise, with the distance to the threshold.</summary>
internal static class BorderlineWriter
{
    public static ImmutableArray<BorderlineRule> Write(Decided decided) =>
    [
        .. decided.Rules.Where(r => r.IsBorderline && r.State.Standing != Standing.Yields).Select(r => new BorderlineRule(
            r.Reference, r.Instance.Subject.Key, r.State.Truth == Truth.True, r.WouldConclude,
            [.. Measures(r.Examination, r.Rule.Condition, r.Entry.Condition, r.Index).Distinct()])),
    ];

    private static IEnumerable<Evidence> Measures(Examination examination, Condition condition, Node node, int instance)
    {
        if (!node.UsesPrecision) return [];
        return (condition, node) switch
        {
            (AllOf all, AllNode nodes) => all.Parts.Zip(nodes.Parts).SelectMany(p => Measures(examination, p.First, p.Second, instance)),
            (AnyOf any, AnyNode nodes) => any.Parts.Zip(nodes.Parts).SelectMany(p => Measures(examination, p.First, p.Second, instance)),
            (Negation negation, NotNode not) => Measures(examination, negation.Part, not.Part, instance),
            (Quantified quantified, CountNode count) => count.Sites(examination, instance).Where(s => s >= 0).ToList()
                .SelectMany(s => Measures(examination, quantified.Where, count.Where, s)),
            (Statement statement, StatementNode leaf) => leaf.Choices(examination, instance)
                .Where(c => leaf.Test(examination, c, isWidened: false) != leaf.Test(examination, c, isWidened: true))
                .SelectMany(c => StatementEvidence.Of(examination, statement, leaf, c)),
            _ => [],
        };
    }
}
