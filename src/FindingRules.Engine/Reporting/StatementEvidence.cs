using FindingRules.Engine.Compiling;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>What one statement looked at, for one choice of instances.</summary>
internal static class StatementEvidence
{
    public const string NotSent = "not sent";

    public const string NoValue = "no value";

    public static IEnumerable<Evidence> Of(Examination examination, Statement statement, StatementNode node, int[] chosen)
    {
        var words = OneLine(statement.Location.Words);
        var at = new Reader(examination, node, chosen, words);
        return statement switch
        {
            ValueStatement s => [at.Finding(s.Place, s.Finding)],
            SignStatement s => [at.Finding(s.Place, s.Finding)],
            ExtentStatement s => [at.Finding(s.Place, s.Finding)],
            AssessedStatement { Finding: { } finding } s => [at.Finding(s.Place, finding)],
            AssessedStatement => [at.Structure()],
            NotAssessableStatement s => [at.Finding(s.Place, s.Finding)],
            TopicStatement s => [at.Topic(s)],
            ComparisonStatement s => at.Measures([s.Left, s.Right], Bound(at, s.Left, s.Right)),
            BetweenStatement s => at.Measures([s.Value, s.Low, s.High], Nearest(at, s)),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    private static (string?, string?) Bound(Reader at, QuantityExpression left, QuantityExpression right)
    {
        var (value, threshold) = left is ConstantExpression ? (right, left) : (left, right);
        return Distance(at, value, threshold);
    }

    private static (string?, string?) Nearest(Reader at, BetweenStatement s)
    {
        if (at.Value(s.Value) is not { IsPoint: true, Low: { } value }) return (null, null);
        if (at.Value(s.Low) is not { IsPoint: true, Low: { } low }) return (null, null);
        if (at.Value(s.High) is not { IsPoint: true, Low: { } high }) return (null, null);
        return Distance(at, s.Value, Rational.Abs(value - low) <= Rational.Abs(high - value) ? s.Low : s.High);
    }

    private static (string?, string?) Distance(Reader at, QuantityExpression value, QuantityExpression threshold)
    {
        if (at.Value(threshold) is not { IsPoint: true, Low: { } limit }) return (null, null);
        var unit = at.UnitOf(value) ?? at.UnitOf(threshold);
        if (unit is null) return (null, null);
        var shown = threshold switch
        {
            ConstantExpression constant => constant.Quantity.ToString(),
            DerivedExpression derived => derived.Measure.Show(limit),
            _ => Quantity.FromBase(limit, unit).ToString(),
        };
        return at.Value(value) is { IsPoint: true, Low: { } point }
            ? (shown, Quantity.FromBase(Rational.Abs(point - limit), unit).ToString())
            : (shown, null);
    }

    private static string OneLine(string words) => string.Join(' ', words.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private sealed class Reader(Examination examination, StatementNode node, int[] chosen, string words)
    {
        private readonly AmountReader _amounts = new(examination, node, chosen);

        public Evidence Finding(Place place, Finding finding) => Finding(InstanceAt(place), place, finding, (null, null));

        public Evidence Structure()
        {
            var isAssessed = node.Test(examination, chosen, isWidened: false) == Model.Truths.Truth.True;
            var value = isAssessed ? "assessed" : "not assessed";
            return new Evidence(SubjectAt(chosen[^1], node.Places[^1]), "structure", value, words, null, null, false);
        }

        public Evidence Topic(TopicStatement statement)
        {
            var index = InstanceAt(statement.Place);
            var state = index < 0 ? null : examination.TopicAt(index, ((TopicNode)node).Topic);
            var value = state switch
            {
                { Status: TopicStatus.Published } published => statement.Topic.Values[published.Value].Name,
                { Status: TopicStatus.None } => NoValue,
                _ => "not given",
            };
            return new Evidence(SubjectAt(index, statement.Place), statement.Topic.Name, value, words, null, null, false);
        }

        public IEnumerable<Evidence> Measures(IEnumerable<QuantityExpression> expressions, (string?, string?) bound)
        {
            var measures = expressions.SelectMany(e => MeasuresIn(e, Place.Own)).Distinct().ToList();
            // The distance belongs to the comparison as a whole; it is told with the first measure.
            return measures.Select((m, i) => Finding(InstanceAt(m.Place), m.Place, m.Finding, i == 0 ? bound : (null, null)));
        }

        public Interval? Value(QuantityExpression expression) => _amounts.Value(expression, Place.Own);

        public Unit? UnitOf(QuantityExpression expression) => _amounts.UnitOf(expression, Place.Own);

        private Evidence Finding(int index, Place place, Finding finding, (string? Threshold, string? Distance) bound)
        {
            var value = ValueOf(index, finding)?.ToString() ?? NotSent;
            var isFilled = index >= 0 && examination[index].IsFilled is { } filled && filled[examination.Network.Slots[finding]];
            return new Evidence(SubjectAt(index, place), finding.Name, value, words, bound.Threshold, bound.Distance, isFilled);
        }

        private FindingValue? ValueOf(int index, Finding finding) => examination.ValueAt(index, examination.Network.Slots[finding]);

        private int InstanceAt(Place place) => node.Places.IndexOf(place) is var i && i >= 0 ? chosen[i] : -1;

        private string SubjectAt(int index, Place place)
        {
            var key = index < 0 ? place.Structure?.Name ?? "other side" : examination[index].Subject.Key;
            return place.IsEarlier ? $"earlier {key}" : key;
        }

        private static IEnumerable<(Place Place, Finding Finding)> MeasuresIn(
            QuantityExpression expression, Place from) => expression switch
            {
                MeasureExpression measure => [(PlaceComposition.From(from, measure.Place), measure.Finding)],
                DerivedExpression derived => MeasuresIn(derived.Measure.Is, PlaceComposition.From(from, derived.Place)),
                ArithmeticExpression sum => MeasuresIn(sum.Left, from).Concat(MeasuresIn(sum.Right, from)),
                _ => [],
            };
    }
}
