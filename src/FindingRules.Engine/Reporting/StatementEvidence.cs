using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Reporting;

/// <summary>What one statement looked at, for one choice of instances.</summary>
internal readonly ref struct StatementEvidence
{
    private const string NotSent = "not sent";
    private const string NoValue = "no value";

    private readonly Examination _examination;
    private readonly StatementNode _node;
    private readonly int[] _chosen;
    private readonly StatementLook _look;

    private StatementEvidence(Examination examination, Statement statement, StatementNode node, int[] chosen) =>
        (_examination, _node, _chosen, _look) = (examination, node, chosen, examination.Network.Words.Of(statement, node));

    public static void Add(Once<Evidence> to, Examination examination, Statement statement, StatementNode node, int[] chosen)
    {
        var at = new StatementEvidence(examination, statement, node, chosen);
        switch (statement, node)
        {
            case (AssessedStatement { Finding: null }, _):
                to.Add(at.Structure());
                break;
            case (TopicStatement s, TopicNode topic):
                to.Add(at.Topic(s, topic));
                break;
            case (ComparisonStatement s, ComparisonNode comparison):
                at.AddFindings(to, at.Bound(s, comparison));
                break;
            case (BetweenStatement s, BetweenNode between):
                at.AddFindings(to, at.Nearest(s, between));
                break;
            default:
                at.AddFindings(to, default);
                break;
        }
    }

    /// <summary>
    /// Whether it looked at something that was sent. A normal that was filled in is not something sent, nor is a topic that
    /// has no answer.
    /// </summary>
    public static bool IsOfSomethingSent(Examination examination, Statement statement, StatementNode node, int[] chosen)
    {
        var at = new StatementEvidence(examination, statement, node, chosen);
        if (statement is TopicStatement)
            return !(chosen[^1] is var index and >= 0
                && examination.TopicAt(index, ((TopicNode)node).Topic) is { Status: TopicStatus.None });
        foreach (var look in at._look.Findings)
            if (at.InstanceOf(look) is var i and >= 0 && examination.ValueAt(i, look.Slot) is not null && !at.IsFilled(i, look.Slot))
                return true;
        return false;
    }

    /// <summary>Everything that it works with is measured, in some choice; where it is unknown then, a divisor may be zero.</summary>
    public static bool IsWholeKnown(Examination examination, Statement statement, StatementNode node, int instance)
    {
        foreach (var chosen in node.Choices(examination, instance))
            if (new StatementEvidence(examination, statement, node, chosen).IsWholeKnown())
                return true;
        return false;
    }

    private bool IsWholeKnown()
    {
        foreach (var look in _look.Findings)
            if (InstanceOf(look) is not (var i and >= 0) || _examination.ValueAt(i, look.Slot) is not MeasuredValue)
                return false;
        return true;
    }

    private Evidence Structure()
    {
        var value = _node.Test(_examination, _chosen, isWidened: false) == Truth.True ? "assessed" : "not assessed";
        return new Evidence(SubjectAt(_chosen[^1], _node.Places[^1]), "structure", value, _look.Words, null, null, false);
    }

    private Evidence Topic(TopicStatement statement, TopicNode node)
    {
        var index = _chosen[^1];
        var state = index < 0 ? null : _examination.TopicAt(index, node.Topic);
        var value = state switch
        {
            { Status: TopicStatus.Published } published => statement.Topic.Values[published.Value].Name,
            { Status: TopicStatus.None } => NoValue,
            _ => "not given",
        };
        return new Evidence(SubjectAt(index, statement.Place), statement.Topic.Name, value, _look.Words, null, null, false);
    }

    /// <summary>The distance belongs to the comparison as a whole; it is told with the first measure.</summary>
    private void AddFindings(Once<Evidence> to, (string? Threshold, string? Distance) bound)
    {
        foreach (var look in _look.Findings)
        {
            var index = InstanceOf(look);
            var value = _examination.ValueAt(index, look.Slot)?.ToString() ?? NotSent;
            to.Add(new Evidence(
                SubjectAt(index, look.Place), look.Finding.Name, value, _look.Words, bound.Threshold, bound.Distance,
                index >= 0 && IsFilled(index, look.Slot)));
            bound = default;
        }
    }

    private (string?, string?) Bound(ComparisonStatement s, ComparisonNode node) => s.Left is ConstantExpression
        ? Distance(s.Right, Value(node.Right), s.Left, Value(node.Left))
        : Distance(s.Left, Value(node.Left), s.Right, Value(node.Right));

    private (string?, string?) Nearest(BetweenStatement s, BetweenNode node)
    {
        var (value, low, high) = (Value(node.Value), Value(node.Low), Value(node.High));
        if (Point(value) is not { } at || Point(low) is not { } from || Point(high) is not { } to) return default;
        return Rational.Abs(at - from) <= Rational.Abs(to - at)
            ? Distance(s.Value, value, s.Low, low)
            : Distance(s.Value, value, s.High, high);
    }

    private (string?, string?) Distance(QuantityExpression measured, Interval? value, QuantityExpression threshold, Interval? limit)
    {
        if (Point(limit) is not { } end) return default;
        var amounts = new AmountReader(_examination, _node, _chosen);
        var unit = amounts.UnitOf(measured, Place.Own) ?? amounts.UnitOf(threshold, Place.Own);
        if (unit is null) return default;
        var shown = threshold switch
        {
            ConstantExpression constant => constant.Quantity.ToString(),
            DerivedExpression derived => derived.Measure.Show(end),
            _ => Quantity.FromBase(end, unit).ToString(),
        };
        return (shown, Point(value) is { } point ? Quantity.FromBase(Rational.Abs(point - end), unit).ToString() : null);
    }

    private static Rational? Point(Interval? interval) => interval is { IsPoint: true, Low: { } point } ? point : null;

    private Interval? Value(Amount amount) => amount.Of(_examination, _chosen, isWidened: false);

    private bool IsFilled(int index, int slot) => _examination[index].IsFilled is { } filled && filled[slot];

    private int InstanceOf(FindingLook look) => look.Choice < 0 ? -1 : _chosen[look.Choice];

    private string SubjectAt(int index, Place place)
    {
        var key = index < 0 ? place.Structure?.Name ?? "other side" : _examination[index].Subject.Key;
        return place.IsEarlier ? $"earlier {key}" : key;
    }
}
