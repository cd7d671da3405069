using System.Collections.Immutable;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Reporting;

/// <summary>
/// Rules that are left undecided and of which something was sent: unknown ones, and true ones that something unknown
/// could still withdraw. A rule nothing of which was sent is not spoken of, and neither is one that could become true
/// only by an earlier study where none was sent.
/// </summary>
internal static class UndecidedWriter
{
    public static ImmutableArray<UndecidedRule> Write(Decided decided)
    {
        var undecided = ImmutableArray.CreateBuilder<UndecidedRule>();
        foreach (var rule in decided.Live)
            if (Of(rule, decided.HasEarlierStudy) is { } left)
                undecided.Add(left);
        return undecided.DrainToImmutable();
    }

    private static UndecidedRule? Of(RuleAt rule, bool hasEarlier)
    {
        switch (rule.State.Standing)
        {
            case Standing.Unknown when IsTouched(rule) && (hasEarlier || EarlierStudy.IsNotNeededFor(rule)):
                return Make(rule, MissingFinder.Of(rule), []);
            case Standing.Open:
                return MakeWaiting(rule, UnknownSuperiors(rule));
            case Standing.Stands when rule.IsPublished:
                // The rule is settled; only the probability that it states waits for the one before.
                var before = ProbabilityWriter.MissingBefore(rule);
                return before.IsEmpty ? null : Make(rule, before, []);
            case Standing.Stands:
                var open = OpenRulesOfTopics(rule);
                return open.Count == 0 ? null : MakeWaiting(rule, open);
            default:
                return null;
        }
    }

    private static List<RuleAt> UnknownSuperiors(RuleAt rule)
    {
        var unknown = new List<RuleAt>();
        foreach (var position in rule.Entry.Superiors)
            if (rule with { Position = position } is { State: { IsDecided: true, Truth: Truth.Unknown } } superior)
                unknown.Add(superior);
        return unknown;
    }

    private static List<RuleAt> OpenRulesOfTopics(RuleAt rule)
    {
        var open = new List<RuleAt>();
        foreach (var conclusion in rule.Rule.Conclusions)
        {
            if (conclusion is not TopicConclusion given || rule.StateOf(given.Topic).Status != TopicStatus.Open) continue;
            foreach (var other in OpenRules.Of(rule.Examination, rule.Index, given.Topic))
                if (!open.Contains(other))
                    open.Add(other);
        }
        return open;
    }

    private static UndecidedRule MakeWaiting(RuleAt rule, List<RuleAt> waitsFor) => Make(
        rule, MissingFinder.Of(rule.Examination, waitsFor), [.. waitsFor.Select(r => r.Rule.Id).Order(StringComparer.Ordinal)]);

    private static UndecidedRule Make(RuleAt rule, ImmutableArray<MissingKey> missing, ImmutableArray<string> waitsFor) =>
        new(rule.Reference, rule.Instance.Subject.Key, rule.WouldConclude, missing, waitsFor);

    /// <summary>
    /// Some statement of the rule is already settled by a finding, or speaks of one sent as a bound, or of a divisor that may be zero.
    /// </summary>
    private static bool IsTouched(RuleAt rule) =>
        (rule.Entry.OwnSlots is not { } slots || rule.Instance.LesionCount > 0 || AnySent(rule.Instance.Values, slots))
        && IsTouched(rule.Examination, rule.Rule.Condition, rule.Entry.Condition, rule.Index);

    private static bool AnySent(FindingValue?[] values, ImmutableArray<int> slots)
    {
        foreach (var slot in slots)
            if (values[slot] is not null)
                return true;
        return false;
    }

    private static bool IsTouched(Examination examination, Condition condition, Node node, int instance) => (condition, node) switch
    {
        (AllOf all, AllNode nodes) => AnyTouched(examination, all.Parts, nodes.Parts, instance),
        (AnyOf any, AnyNode nodes) => AnyTouched(examination, any.Parts, nodes.Parts, instance),
        (Negation negation, NotNode not) => IsTouched(examination, negation.Part, not.Part, instance),
        (Quantified quantified, CountNode count) => AnyTouched(examination, quantified.Where, count, instance),
        (AssessedStatement or NotAssessableStatement, _) => false,
        (ComparisonStatement or BetweenStatement, StatementNode measure)
            when measure.UsesBound(examination, instance)
                || StatementEvidence.IsWholeKnown(examination, (Statement)condition, measure, instance) =>
            IsSent(examination, (Statement)condition, measure, instance),
        (Statement statement, StatementNode leaf) =>
            leaf.Decide(examination, instance, isWidened: false) != Truth.Unknown && IsSent(examination, statement, leaf, instance),
        _ => node.Decide(examination, instance, isWidened: false) != Truth.Unknown,
    };

    /// <summary>They settle rules, but no rule is spoken of for the sake of what was not sent.</summary>
    private static bool IsSent(Examination examination, Statement statement, StatementNode leaf, int instance)
    {
        foreach (var chosen in leaf.Choices(examination, instance))
            if (StatementEvidence.IsOfSomethingSent(examination, statement, leaf, chosen))
                return true;
        return false;
    }

    private static bool AnyTouched(Examination examination, Condition where, CountNode count, int instance)
    {
        foreach (var site in count.Sites(examination, instance))
            if (site >= 0 && examination[site].IsPresent && IsTouched(examination, where, count.Where, site))
                return true;
        return false;
    }

    private static bool AnyTouched(Examination examination, ImmutableArray<Condition> parts, ImmutableArray<Node> nodes, int instance)
    {
        for (var i = 0; i < parts.Length; i++)
            if (IsTouched(examination, parts[i], nodes[i], instance))
                return true;
        return false;
    }
}
