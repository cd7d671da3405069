using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Reporting;

/// <summary>Whether findings of this study alone could make a rule true: nobody can add an earlier study afterwards.</summary>
internal static class EarlierStudy
{
    public static bool IsNotNeededFor(RuleAt rule) =>
        CanBecome(Truth.True, rule.Examination, rule.Rule.Condition, rule.Entry.Condition, rule.Index);

    private static bool CanBecome(Truth wanted, Examination examination, Condition condition, Node node, int instance)
    {
        var truth = node.Decide(examination, instance, isWidened: false);
        if (truth != Truth.Unknown) return truth == wanted;
        return (condition, node) switch
        {
            (AllOf all, AllNode nodes) => OfParts(all.Parts.Zip(nodes.Parts), isEachNeeded: wanted == Truth.True),
            (AnyOf any, AnyNode nodes) => OfParts(any.Parts.Zip(nodes.Parts), isEachNeeded: wanted == Truth.False),
            (Negation negation, NotNode not) => CanBecome(Kleene.Not(wanted), examination, negation.Part, not.Part, instance),
            (Statement, StatementNode leaf) => !leaf.Places.Any(p => p.IsEarlier),
            _ => true,
        };

        bool OfParts(IEnumerable<(Condition Part, Node Node)> parts, bool isEachNeeded) => isEachNeeded
            ? parts.All(p => CanBecome(wanted, examination, p.Part, p.Node, instance))
            : parts.Any(p => CanBecome(wanted, examination, p.Part, p.Node, instance));
    }
}
