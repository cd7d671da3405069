using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Reference;

/// <summary>The truth of one statement: true if true of one choice of lesions.</summary>
internal sealed class StatementTruth(Whereabouts whereabouts, Answers answers, bool isWidened)
{
    private readonly QuantityValue _quantities = new(whereabouts, isWidened);

    public Truth Of(Statement statement, Subject own)
    {
        var spot = new Spot(own);
        return whereabouts.InstancesOf(spot)
            .SelectMany(instance => OfEachChoice(statement, instance, Choices.None.With(spot, instance)))
            .Aggregate(Truth.False, Kleene.Or);
    }

    private IEnumerable<Truth> OfEachChoice(Statement statement, Spot own, Choices choices) => statement switch
    {
        ValueStatement s => choices.At(s.Place, own, whereabouts).Select(c => OfValue(s, whereabouts.Find(c.Spot, s.Finding))),
        SignStatement s => choices.At(s.Place, own, whereabouts).Select(c => OfSign(whereabouts.Find(c.Spot, s.Finding))),
        ExtentStatement s => choices.At(s.Place, own, whereabouts).Select(c => OfExtent(s, whereabouts.Find(c.Spot, s.Finding))),
        AssessedStatement s => choices.At(s.Place, own, whereabouts).Select(c => Kleene.Of(IsAssessed(s, c.Spot))),
        NotAssessableStatement s => choices.At(s.Place, own, whereabouts)
            .Select(c => Kleene.Of(c.Spot is not null && whereabouts.IsNotAssessable(c.Spot, s.Finding))),
        TopicStatement s => choices.At(s.Place, own, whereabouts).Select(c => OfTopic(s, c.Spot)),
        ComparisonStatement s =>
            from left in _quantities.Of(s.Left, own, choices)
            from right in _quantities.Of(s.Right, own, left.Choices)
            select Compare(left.Value, s.Comparator, right.Value),
        BetweenStatement s =>
            from value in _quantities.Of(s.Value, own, choices)
            from low in _quantities.Of(s.Low, own, value.Choices)
            from high in _quantities.Of(s.High, own, low.Choices)
            select Between(low.Value, value.Value, high.Value),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static Truth OfValue(ValueStatement statement, FindingValue? value) =>
        value is ChoiceValue choice ? Kleene.Of(statement.Values.Contains(choice.Value)) : Truth.Unknown;

    private static Truth OfSign(FindingValue? value) => value is SignValue sign ? Kleene.Of(sign.IsPresent) : Truth.Unknown;

    private static Truth OfExtent(ExtentStatement statement, FindingValue? value)
    {
        if (value is not ExtentValue extent) return Truth.Unknown;
        return Kleene.Of(statement.Relation == ExtentRelation.Within
            ? extent.Stretches.Length > 0 && extent.Stretches.All(s => s.From >= statement.From && s.To <= statement.To)
            : extent.Stretches.Any(s => s.From <= statement.From && s.To >= statement.To));
    }

    private bool IsAssessed(AssessedStatement statement, Spot? spot) =>
        spot is not null
        && (statement.Finding is { } finding ? whereabouts.Find(spot, finding) is not null : whereabouts.IsAnythingKnown(spot));

    private Truth OfTopic(TopicStatement statement, Spot? spot)
    {
        if (spot is null or { IsEarlier: true } or { IsNowhere: true }) return Truth.Unknown;
        return answers.TruthOf(statement.Topic, statement.Values, statement.Topic.IsPerStructure ? spot.Subject.Whole : spot.Subject);
    }

    private static Truth Between(Interval? low, Interval? value, Interval? high) =>
        low is { } a && value is { } b && high is { } c ? Kleene.And(a.AtMost(b), b.AtMost(c)) : Truth.Unknown;

    private static Truth Compare(Interval? left, Comparator comparator, Interval? right)
    {
        if (left is not { } a || right is not { } b) return Truth.Unknown;
        return comparator switch
        {
            Comparator.Above => b.Below(a),
            Comparator.AtLeast => b.AtMost(a),
            Comparator.Below => a.Below(b),
            Comparator.AtMost => a.AtMost(b),
            _ => a.EqualTo(b),
        };
    }
}
