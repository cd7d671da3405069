using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Reporting;

/// <summary>Whether measurements a little off, and nothing else, could make a rule true that is not.</summary>
internal static class NearTruth
{
    public static bool IsNear(RuleAt rule) =>
        CanBecome(Truth.True, rule.Examination, rule.Rule.Condition, rule.Entry.Condition, rule.Index);

    private static bool CanBecome(Truth wanted, Examination examination, Condition condition, Node node, int instance)
    {
        var truth = node.Decide(examination, instance, isWidened: false);
        if (truth == wanted) return true;
        return (condition, node) switch
        {
            (AllOf all, AllNode nodes) => OfParts(all.Parts.Zip(nodes.Parts), isEachNeeded: wanted == Truth.True),
            (AnyOf any, AnyNode nodes) => OfParts(any.Parts.Zip(nodes.Parts), isEachNeeded: wanted == Truth.False),
            (Negation negation, NotNode not) => CanBecome(Kleene.Not(wanted), examination, negation.Part, not.Part, instance),
            _ => truth != Truth.Unknown && node.Decide(examination, instance, isWidened: true) != truth
                && !(node is StatementNode leaf && LostAmounts.IsLost(examination, leaf, instance)),
        };

        bool OfParts(IEnumerable<(Condition Part, Node Node)> parts, bool isEachNeeded) => isEachNeeded
            ? parts.All(p => CanBecome(wanted, examination, p.Part, p.Node, instance))
            : parts.Any(p => CanBecome(wanted, examination, p.Part, p.Node, instance));
    }
}
