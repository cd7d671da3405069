using System.Collections.Immutable;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Readings;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Reporting;

/// <summary>
/// The findings that a settled condition rests on: it follows the network's own answers down to the statements that
/// carry them.
/// </summary>
internal sealed class EvidenceWriter(Examination examination)
{
    private readonly Once<Evidence> _found = new();

    public static ImmutableArray<Evidence> Of(RuleAt rule)
    {
        var writer = new EvidenceWriter(rule.Examination);
        writer.Walk(rule.Rule.Condition, rule.Entry.Condition, rule.Index, rule.State.Truth);
        return writer._found.ToImmutable();
    }

    private void Walk(Condition condition, Node node, int instance, Truth truth)
    {
        switch (condition, node)
        {
            case (AllOf all, AllNode nodes):
                WalkParts(all.Parts, nodes.Parts, instance, truth, keepsAll: truth == Truth.True);
                break;
            case (AnyOf any, AnyNode nodes):
                WalkParts(any.Parts, nodes.Parts, instance, truth, keepsAll: truth == Truth.False);
                break;
            case (Negation negation, NotNode not):
                Walk(negation.Part, not.Part, instance, Kleene.Not(truth));
                break;
            case (Quantified quantified, CountNode count):
                var carries = quantified.CarriedBy(truth);
                foreach (var site in count.Sites(examination, instance))
                    if (site >= 0 && count.Where.Decide(examination, site, isWidened: false) == carries)
                        Walk(quantified.Where, count.Where, site, carries);
                break;
            case (Statement statement, StatementNode leaf):
                Choice(statement, leaf, instance, truth);
                break;
        }
    }

    private void WalkParts(ImmutableArray<Condition> parts, ImmutableArray<Node> nodes, int instance, Truth truth, bool keepsAll)
    {
        for (var i = 0; i < parts.Length; i++)
            if (keepsAll || nodes[i].Decide(examination, instance, isWidened: false) == truth)
                Walk(parts[i], nodes[i], instance, truth);
    }

    private void Choice(Statement statement, StatementNode node, int instance, Truth truth)
    {
        foreach (var chosen in node.Choices(examination, instance))
        {
            if (node.Test(examination, chosen, isWidened: false) != truth) continue;
            StatementEvidence.Add(_found, examination, statement, node, chosen);
            if (truth == Truth.True) return;
        }
    }
}
