using System.Collections.Immutable;
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
            (AllOf all, AllNode nodes) => CanParts(wanted, examination, all.Parts, nodes.Parts, instance, wanted == Truth.True),
            (AnyOf any, AnyNode nodes) => CanParts(wanted, examination, any.Parts, nodes.Parts, instance, wanted == Truth.False),
            (Negation negation, NotNode not) => CanBecome(Kleene.Not(wanted), examination, negation.Part, not.Part, instance),
            (Statement, StatementNode leaf) => !SpeaksOfEarlier(leaf),
            _ => true,
        };
    }

    private static bool CanParts(
        Truth wanted, Examination examination, ImmutableArray<Condition> parts, ImmutableArray<Node> nodes, int instance, bool isEachNeeded)
    {
        for (var i = 0; i < parts.Length; i++)
            if (CanBecome(wanted, examination, parts[i], nodes[i], instance) != isEachNeeded)
                return !isEachNeeded;
        return isEachNeeded;
    }

    private static bool SpeaksOfEarlier(StatementNode leaf)
    {
        foreach (var place in leaf.Places)
            if (place.IsEarlier)
                return true;
        return false;
    }
}
