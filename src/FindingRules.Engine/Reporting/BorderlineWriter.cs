using System.Collections.Immutable;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Readings;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Reporting;

/// <summary>Rules that a measurement a little off would have decided otherwise, with the distance to the threshold.</summary>
internal sealed class BorderlineWriter(Examination examination)
{
    private readonly Once<Evidence> _measures = new();

    public static ImmutableArray<BorderlineRule> Write(Decided decided)
    {
        var borderline = ImmutableArray.CreateBuilder<BorderlineRule>();
        foreach (var rule in decided.Live)
            if (rule.IsBorderline && rule.State.Standing != Standing.Yields)
                borderline.Add(new BorderlineRule(
                    rule.Reference, rule.Instance.Subject.Key, rule.State.Truth == Truth.True, rule.WouldConclude, MeasuresOf(rule)));
        return borderline.DrainToImmutable();
    }

    private static ImmutableArray<Evidence> MeasuresOf(RuleAt rule)
    {
        var writer = new BorderlineWriter(rule.Examination);
        writer.Walk(rule.Rule.Condition, rule.Entry.Condition, rule.Index);
        return writer._measures.ToImmutable();
    }

    private void Walk(Condition condition, Node node, int instance)
    {
        if (!node.UsesPrecision) return;
        switch (condition, node)
        {
            case (AllOf all, AllNode nodes):
                for (var i = 0; i < all.Parts.Length; i++) Walk(all.Parts[i], nodes.Parts[i], instance);
                break;
            case (AnyOf any, AnyNode nodes):
                for (var i = 0; i < any.Parts.Length; i++) Walk(any.Parts[i], nodes.Parts[i], instance);
                break;
            case (Negation negation, NotNode not):
                Walk(negation.Part, not.Part, instance);
                break;
            case (Quantified quantified, CountNode count):
                foreach (var site in count.Sites(examination, instance))
                    if (site >= 0)
                        Walk(quantified.Where, count.Where, site);
                break;
            case (Statement statement, StatementNode leaf):
                foreach (var chosen in leaf.Choices(examination, instance))
                    if (leaf.Test(examination, chosen, isWidened: false) != leaf.Test(examination, chosen, isWidened: true))
                        Add(statement, leaf, chosen);
                break;
        }
    }

    /// <summary>Where the precision leaves nothing to compare, how far the limit is says nothing.</summary>
    private void Add(Statement statement, StatementNode leaf, int[] chosen)
    {
        var measures = new Once<Evidence>();
        StatementEvidence.Add(measures, examination, statement, leaf, chosen);
        var isLost = LostAmounts.IsLost(examination, leaf, chosen);
        for (var i = 0; i < measures.Count; i++) _measures.Add(isLost ? measures[i] with { Distance = null } : measures[i]);
    }
}
