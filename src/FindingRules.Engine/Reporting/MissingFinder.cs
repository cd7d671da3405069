using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>
/// The findings that keep something unknown: of an unknown condition the unknown parts, of an open topic what keeps its
/// rules unknown. What could not be assessed is not asked for.
/// </summary>
internal sealed class MissingFinder(Examination examination)
{
    private readonly Once<MissingKey> _missing = new();
    private HashSet<(int, int)>? _topicsSeen;

    public static ImmutableArray<MissingKey> Of(RuleAt rule)
    {
        var finder = new MissingFinder(rule.Examination);
        finder.Walk(rule.Rule.Condition, rule.Entry.Condition, rule.Index);
        return finder.Found();
    }

    public static ImmutableArray<MissingKey> Of(Examination examination, List<RuleAt> rules)
    {
        var finder = new MissingFinder(examination);
        foreach (var rule in rules) finder.Walk(rule.Rule.Condition, rule.Entry.Condition, rule.Index);
        return finder.Found();
    }

    /// <summary>What a quantity without a value lacks.</summary>
    public static ImmutableArray<MissingKey> Of(RuleAt rule, QuantityExpression amount, StatementNode node)
    {
        var finder = new MissingFinder(rule.Examination);
        foreach (var chosen in node.Choices(rule.Examination, rule.Index)) finder.Amount(amount, Place.Own, node, rule.Index, chosen);
        return finder.Found();
    }

    private ImmutableArray<MissingKey> Found() => _missing.Sorted(static (a, b) =>
        string.CompareOrdinal(a.Subject, b.Subject) is var bySubject && bySubject != 0
            ? bySubject
            : string.CompareOrdinal(a.Finding, b.Finding));

    private void Walk(Condition condition, Node node, int instance)
    {
        if (node.Decide(examination, instance, isWidened: false) != Truth.Unknown) return;
        switch (condition, node)
        {
            case (AllOf all, AllNode nodes):
                for (var i = 0; i < nodes.Parts.Length; i++) Walk(all.Parts[i], nodes.Parts[i], instance);
                break;
            case (AnyOf any, AnyNode nodes):
                for (var i = 0; i < nodes.Parts.Length; i++) Walk(any.Parts[i], nodes.Parts[i], instance);
                break;
            case (Negation negation, NotNode not):
                Walk(negation.Part, not.Part, instance);
                break;
            case (Quantified quantified, CountNode count):
                // Structures that nobody examined belong here too: without them a count may lack nothing and yet be open.
                foreach (var site in count.Sites(examination, instance))
                    if (site >= 0)
                        Walk(quantified.Where, count.Where, site);
                break;
            case (Statement statement, StatementNode leaf):
                foreach (var chosen in leaf.Choices(examination, instance))
                    if (leaf.Test(examination, chosen, isWidened: false) == Truth.Unknown)
                        Statement(statement, leaf, instance, chosen);
                break;
        }
    }

    private void Statement(Statement statement, StatementNode node, int instance, int[] chosen)
    {
        switch (statement)
        {
            case ValueStatement s: Finding(s.Place, s.Finding, node, instance, chosen); break;
            case SignStatement s: Finding(s.Place, s.Finding, node, instance, chosen); break;
            case ExtentStatement s: Finding(s.Place, s.Finding, node, instance, chosen); break;
            case TopicStatement s: Topic(s, (TopicNode)node, instance, chosen); break;
            case ComparisonStatement s: Amounts([s.Left, s.Right], node, instance, chosen); break;
            case BetweenStatement s: Amounts([s.Value, s.Low, s.High], node, instance, chosen); break;
        }
    }

    private void Amounts(IEnumerable<QuantityExpression> amounts, StatementNode node, int instance, int[] chosen)
    {
        foreach (var amount in amounts) Amount(amount, Place.Own, node, instance, chosen);
    }

    private void Amount(QuantityExpression amount, Place from, StatementNode node, int instance, int[] chosen)
    {
        switch (amount)
        {
            case MeasureExpression measure:
                Finding(PlaceComposition.From(from, measure.Place), measure.Finding, node, instance, chosen);
                break;
            case DerivedExpression derived:
                Amount(derived.Measure.Is, PlaceComposition.From(from, derived.Place), node, instance, chosen);
                break;
            case ArithmeticExpression sum:
                Amount(sum.Left, from, node, instance, chosen);
                Amount(sum.Right, from, node, instance, chosen);
                break;
        }
    }

    private void Finding(Place place, Finding finding, StatementNode node, int instance, int[] chosen)
    {
        var index = chosen[node.Places.IndexOf(place)];
        if (index < 0)
        {
            if (SubjectOf(examination, place, instance) is { } subject)
                _missing.Add(new MissingKey(Earlier(place, subject.Key), finding.Name));
            return;
        }
        switch (examination.ValueAt(index, examination.Network.Slots[finding]))
        {
            case null:
            case MeasuredValue { IsBound: true }:
                _missing.Add(new MissingKey(Earlier(place, examination[index].Subject.Key), finding.Name));
                break;
        }
    }

    private void Topic(TopicStatement statement, TopicNode node, int instance, int[] chosen)
    {
        var index = chosen[node.Places.IndexOf(statement.Place)];
        if (index < 0 || !examination[index].IsPresent)
        {
            var subject = index < 0 ? SubjectOf(examination, statement.Place, instance) : examination[index].Subject;
            if (subject is not null) _missing.Add(new MissingKey(subject.Key, statement.Topic.Name));
            return;
        }
        if (examination[index].IsLesion && statement.Topic.IsPerStructure) index = examination[index].Whole;
        if (!(_topicsSeen ??= []).Add((index, node.Topic))) return;
        foreach (var rule in OpenRules.Of(examination, index, statement.Topic))
            Walk(rule.Rule.Condition, rule.Entry.Condition, rule.Index);
    }

    /// <summary>Whose finding a place means, whether or not it was examined; null where that cannot be told.</summary>
    public static Subject? SubjectOf(Examination examination, Place place, int instance)
    {
        var subject = examination[instance].Subject;
        var structure = place.Structure ?? subject.Structure;
        if (structure is null || place.Relation == PlaceRelation.Study) return place.Relation == PlaceRelation.Study ? Subject.Study : null;
        if (!structure.IsPaired)
            return place.Relation == PlaceRelation.Own || place is { Relation: PlaceRelation.Ipsilateral, Structure: not null }
                ? new Subject(structure, Side.None, null)
                : null;
        if (subject.Side is not (Side.Left or Side.Right)) return null;
        return new Subject(structure, place.Relation == PlaceRelation.Contralateral ? subject.Side.Other() : subject.Side, null);
    }

    private static string Earlier(Place place, string key) => place.IsEarlier ? $"earlier {key}" : key;
}

/// <summary>The unknown rules that keep a topic open: those that may give or hold it, and those they wait for.</summary>
internal static class OpenRules
{
    public static List<RuleAt> Of(Examination examination, int index, Model.Packs.Topic topic)
    {
        var open = new List<RuleAt>();
        foreach (var entry in examination[index].Plan.Topics)
        {
            if (entry.Topic != topic) continue;
            foreach (var (giver, _) in entry.Givers) AddWithSuperiors(open, new RuleAt(examination, index, giver));
            foreach (var holder in entry.Holders) AddWithSuperiors(open, new RuleAt(examination, index, holder));
        }
        return open;
    }

    private static void AddWithSuperiors(List<RuleAt> open, RuleAt rule)
    {
        foreach (var superior in rule.Entry.Superiors) Add(open, rule with { Position = superior });
        Add(open, rule);
    }

    private static void Add(List<RuleAt> open, RuleAt rule)
    {
        if (rule.State is { IsDecided: true, Truth: Truth.Unknown, Standing: not Standing.Yields } && !open.Contains(rule)) open.Add(rule);
    }
}
