using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;
using static FindingRules.Testing.Generators.ModelOf;

namespace FindingRules.Testing.Generators;

/// <summary>Conditions with every sort of node, over the findings of a vocabulary and the topics that are settled before.</summary>
public sealed class ConditionDrawing
{
    private readonly Draw _draw;
    private readonly Vocabulary _vocabulary;
    private readonly IReadOnlyList<Topic> _testable;
    private readonly bool _mayAskAssessed;
    private readonly PlaceDrawing _places;
    private readonly QuantityDrawing _quantities;

    public ConditionDrawing(Draw draw, Symbols symbols, IReadOnlyList<Topic> testable, bool mayAskAssessed)
    {
        (_draw, _vocabulary, _testable, _mayAskAssessed) = (draw, symbols.Vocabulary, testable, mayAskAssessed);
        _places = new PlaceDrawing(draw, _vocabulary);
        _quantities = new QuantityDrawing(draw, _places, [.. symbols.DerivedMeasures.Values]);
    }

    /// <summary>A condition for rules of the scope; every structure in it has each finding that it speaks of.</summary>
    public Condition Make(Scope own, int depth)
    {
        var kind = depth == 0 ? 0 : _draw.Below(100);
        if (kind < 46) return Leaf(own);
        if (kind < 60) return new AllOf(Parts(own, depth), Nowhere);
        if (kind < 76) return new AnyOf(Parts(own, depth), Nowhere);
        if (kind < 86) return new Negation(Make(own, depth - 1), Nowhere);
        var range = Range();
        return new Quantified(
            _draw.Of(Quantifier.Any, Quantifier.Every, Quantifier.No, Quantifier.AtLeast), _draw.Between(1, 3), range,
            Make(range, depth - 1), Nowhere);
    }

    private ImmutableArray<Condition> Parts(Scope own, int depth) =>
        [.. Enumerable.Range(0, _draw.Between(2, 3)).Select(_ => Make(own, depth - 1))];

    private Scope Range() => _draw.Chance(70)
        ? Each(_vocabulary, _draw.Of(_vocabulary.Kinds.Values.ToList()))
        : Each(_draw.Of(_vocabulary.Structures.Values.ToList()));

    private Statement Leaf(Scope own) => _draw.Weighted<Func<Scope, Statement>>(
        (24, Value), (14, Sign), (_testable.Count == 0 ? 0 : 30, AboutTopic), (26, Comparison), (10, Between), (12, Extent),
        (_mayAskAssessed ? 8 : 0, Assessed))(own);

    private ValueStatement Value(Scope own)
    {
        var (place, finding) = _places.Find<ChoiceType>(own);
        return new ValueStatement(place, finding, SomeOf(((ChoiceType)finding.Type).Values), Nowhere);
    }

    private SignStatement Sign(Scope own)
    {
        if (own.Kind is { Name: not "fascia" } kind && _draw.Chance(50)) return new SignStatement(Place.Own, kind.Findings["shadowing"], Nowhere);
        var (place, finding) = _places.Find<SignType>(own);
        return new SignStatement(place, finding, Nowhere);
    }

    private Statement AboutTopic(Scope own)
    {
        var topic = _draw.Of(_testable);
        if (topic.Scope.IsStudy) return new TopicStatement(Place.Study, topic, Values(topic), Nowhere);
        for (var tries = 0; tries < 3 && !own.IsStudy; tries++)
        {
            var (place, kind) = _places.Any(own);
            var meant = place.Structure is { } one ? [one] : own.Structures;
            if (kind is null || !meant.All(s => topic.Scope.Covers(s))) continue;
            return new TopicStatement(place with { IsEarlier = false }, topic, Values(topic), Nowhere);
        }
        return Value(own);
    }

    private ComparisonStatement Comparison(Scope own)
    {
        var (left, right, _) = _quantities.Comparable(own);
        return new ComparisonStatement(left, _draw.Of(Enum.GetValues<Comparator>()), right, Nowhere);
    }

    private BetweenStatement Between(Scope own)
    {
        var (value, low, high) = _quantities.Comparable(own);
        return new BetweenStatement(value, low, high, Nowhere);
    }

    private Statement Extent(Scope own)
    {
        if (own.IsStudy) return Sign(own);
        var candidates = own.Kind!.Findings.Values.Where(f => f.Type is ExtentType).ToList();
        var (place, finding) = candidates.Count > 0 && _draw.Chance(60) ? (Place.Own, _draw.Of(candidates)) : Elsewhere();
        var last = ((ExtentType)finding.Type).Axis.Points.Length - 1;
        var from = _draw.Between(0, last);
        var relation = _draw.Of(Enum.GetValues<ExtentRelation>());
        var to = relation == ExtentRelation.Reaches ? from : _draw.Between(from, last);
        return new ExtentStatement(place, finding, relation, from, to, Nowhere);
    }

    private (Place, Finding) Elsewhere()
    {
        var structure = _draw.Of(_vocabulary.Structures.Values.Where(s => s.Kind.Findings.Values.Any(f => f.Type is ExtentType)).ToList());
        return (
            new Place(PlaceRelation.Ipsilateral, structure, _draw.Chance(10)),
            structure.Kind.Findings.Values.First(f => f.Type is ExtentType));
    }

    private Statement Assessed(Scope own)
    {
        if (own.IsStudy || _draw.Chance(75))
        {
            var (at, finding) = _draw.Chance(50) ? _places.Find<MeasureType>(own) : _places.Find<ChoiceType>(own);
            return _draw.Chance(40) ? new NotAssessableStatement(at, finding, Nowhere) : new AssessedStatement(at, finding, Nowhere);
        }
        var (place, kind) = _places.Any(own);
        return new AssessedStatement(kind is null ? Place.Own : place, null, Nowhere);
    }

    private ImmutableSortedSet<string> Values(Topic topic) => SomeOf([.. topic.Values.Select(v => v.Name)]);

    private ImmutableSortedSet<string> SomeOf(ImmutableArray<string> values)
    {
        var some = _draw.Shuffle(values).Take(_draw.Between(1, Math.Max(1, values.Length - 1)));
        return some.ToImmutableSortedSet(StringComparer.Ordinal);
    }
}
