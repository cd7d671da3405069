using System.Collections.Immutable;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Readings;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Reporting;

/// <summary>
/// Rules that are left undecided and of which something was sent: unknown ones, and true ones that something unknown
/// could still withdraw. A rule nothing of which was sent is not spoken of, and neither is one that could become true
/// only by an earlier study where none was sent.
/// </summary>
internal static class UndecidedWriter
{
    public static ImmutableArray<UndecidedRule> Write(Decided decided) =>
        [.. decided.Rules.Select(r => Of(r, decided.HasEarlierStudy)).OfType<UndecidedRule>()];

    private static UndecidedRule? Of(RuleAt rule, bool hasEarlier)
    {
        switch (rule.State.Standing)
        {
            case Standing.Unknown when IsTouched(rule) && (hasEarlier || EarlierStudy.IsNotNeededFor(rule)):
                return Make(rule, [rule], []);
            case Standing.Open:
                var superiors = rule.Entry.Superiors.Select(p => new RuleAt(rule.Examination, rule.Index, p))
                    .Where(r => r.State is { IsDecided: true, Truth: Truth.Unknown }).ToList();
                return Make(rule, superiors, superiors);
            case Standing.Stands when rule.IsPublished:
                // The rule is settled; only the probability that it states waits for the one before.
                var before = ProbabilityWriter.MissingBefore(rule);
                return before.Count == 0 ? null : new UndecidedRule(
                    rule.Reference, rule.Instance.Subject.Key, rule.WouldConclude, [.. before], []);
            case Standing.Stands:
                var open = rule.Rule.Topics.Where(t => rule.StateOf(t.Topic).Status == TopicStatus.Open)
                    .SelectMany(t => OpenRules.Of(rule.Examination, rule.Index, t.Topic)).DistinctBy(r => r.Position).ToList();
                return open.Count == 0 ? null : Make(rule, open, open);
            default:
                return null;
        }
    }

    private static UndecidedRule Make(RuleAt rule, IReadOnlyCollection<RuleAt> unknown, IReadOnlyCollection<RuleAt> waitsFor) => new(
        rule.Reference, rule.Instance.Subject.Key, rule.WouldConclude,
        [.. MissingFinder.Of(rule.Examination, unknown)],
        [.. waitsFor.Select(r => r.Rule.Id).Order(StringComparer.Ordinal)]);

    /// <summary>Some statement of the rule is already settled by a finding, or speaks of one sent as a bound.</summary>
    private static bool IsTouched(RuleAt rule)
    {
        var values = rule.Instance.Values;
        if (rule.Entry.OwnSlots is { } slots && rule.Instance.LesionCount == 0 && slots.All(s => values[s] is null)) return false;
        return IsTouched(rule.Examination, rule.Rule.Condition, rule.Entry.Condition, rule.Index);
    }

    private static bool IsTouched(Examination examination, Condition condition, Node node, int instance) => (condition, node) switch
    {
        (AllOf all, AllNode nodes) => AnyTouched(examination, all.Parts, nodes.Parts, instance),
        (AnyOf any, AnyNode nodes) => AnyTouched(examination, any.Parts, nodes.Parts, instance),
        (Negation negation, NotNode not) => IsTouched(examination, negation.Part, not.Part, instance),
        (Quantified quantified, CountNode count) => count.Sites(examination, instance).ToList()
            .Exists(s => s >= 0 && examination[s].IsPresent && IsTouched(examination, quantified.Where, count.Where, s)),
        (AssessedStatement or NotAssessableStatement, _) => false,
        (ComparisonStatement or BetweenStatement, StatementNode measure) when measure.UsesBound(examination, instance) =>
            IsSent(examination, (Statement)condition, measure, instance),
        (Statement statement, StatementNode leaf) =>
            leaf.Decide(examination, instance, isWidened: false) != Truth.Unknown && IsSent(examination, statement, leaf, instance),
        _ => node.Decide(examination, instance, isWidened: false) != Truth.Unknown,
    };

    /// <summary>
    /// A normal that was filled in is not something sent, nor is a topic that has no answer: they settle rules, and none is
    /// spoken of for their sake.
    /// </summary>
    private static bool IsSent(Examination examination, Statement statement, StatementNode leaf, int instance) =>
        leaf.Choices(examination, instance)
            .SelectMany(chosen => StatementEvidence.Of(examination, statement, leaf, chosen))
            .Any(e => !e.IsFromNormal && e.Value is not (StatementEvidence.NotSent or StatementEvidence.NoValue));

    private static bool AnyTouched(Examination examination, ImmutableArray<Condition> parts, ImmutableArray<Node> nodes, int instance)
    {
        for (var i = 0; i < parts.Length; i++)
            if (IsTouched(examination, parts[i], nodes[i], instance))
                return true;
        return false;
    }
}
