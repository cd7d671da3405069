using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Compiling.Planes;

/// <summary>
/// A statement in, a literal out; null where it speaks of something else than one finding of the rule's own subject or
/// one fact of the study.
/// </summary>
internal sealed class LiteralCompiler(FindingSlots slots, bool isStudyRule)
{
    private const int MostCells = 64;
    private const ulong First = 1;
    private const ulong Second = 2;

    public Literal? Of(Statement statement, bool isNegated) => statement switch
    {
        ValueStatement s => Choice(s, isNegated),
        SignStatement s => TwoCells(TestSort.Sign, s.Place, s.Finding, isNegated),
        AssessedStatement { Finding: { } finding } s => TwoCells(TestSort.Assessed, s.Place, finding, isNegated),
        NotAssessableStatement s => TwoCells(TestSort.NotAssessable, s.Place, s.Finding, isNegated),
        ExtentStatement s => Key(TestSort.Extent, s.Place, s.Finding) is { } key
            ? new CellLiteral(key with { Relation = s.Relation, From = s.From, To = s.To }, isNegated ? First : Second)
            : null,
        ComparisonStatement { Left: MeasureExpression measure, Right: ConstantExpression limit } s =>
            Measure(measure, RegionOf(s.Comparator, limit), isNegated),
        ComparisonStatement { Left: ConstantExpression limit, Right: MeasureExpression measure } s =>
            Measure(measure, RegionOf(Turned(s.Comparator), limit), isNegated),
        BetweenStatement { Value: MeasureExpression measure, Low: ConstantExpression low, High: ConstantExpression high } =>
            Measure(measure, Interval.Closed(low.Quantity.InBase, high.Quantity.InBase), isNegated),
        _ => null,
    };

    private CellLiteral? Choice(ValueStatement statement, bool isNegated)
    {
        if (Key(TestSort.Choice, statement.Place, statement.Finding) is not { } key) return null;
        var values = ((ChoiceType)statement.Finding.Type).Values;
        if (values.Length > MostCells) return null;
        var cells = 0UL;
        for (var i = 0; i < values.Length; i++)
            if (statement.Values.Contains(values[i]) != isNegated)
                cells |= 1UL << i;
        return new CellLiteral(key, cells);
    }

    private CellLiteral? TwoCells(TestSort sort, Place place, Finding finding, bool isNegated) =>
        Key(sort, place, finding) is { } key ? new CellLiteral(key, isNegated ? First : Second) : null;

    // Of a region without values (between 5 mm and 3 mm) Kleene's `and` of the two ends knows less than the set does.
    private MeasureLiteral? Measure(MeasureExpression measure, Interval region, bool isNegated) =>
        !region.IsEmpty && Key(TestSort.Measure, measure.Place, measure.Finding) is { } key
            ? new MeasureLiteral(key, region, isNegated)
            : null;

    private TestKey? Key(TestSort sort, Place place, Finding finding)
    {
        if (place == Place.Study) return new TestKey(sort, !isStudyRule, slots[finding], finding);
        return place == Place.Own && !isStudyRule ? new TestKey(sort, false, slots[finding], finding) : null;
    }

    private static Interval RegionOf(Comparator comparator, ConstantExpression limit)
    {
        var at = limit.Quantity.InBase;
        return comparator switch
        {
            Comparator.Above => new Interval(at, false, null, false),
            Comparator.AtLeast => new Interval(at, true, null, false),
            Comparator.Below => new Interval(null, false, at, false),
            Comparator.AtMost => new Interval(null, false, at, true),
            _ => Interval.Point(at),
        };
    }

    private static Comparator Turned(Comparator comparator) => comparator switch
    {
        Comparator.Above => Comparator.Below,
        Comparator.AtLeast => Comparator.AtMost,
        Comparator.Below => Comparator.Above,
        Comparator.AtMost => Comparator.AtLeast,
        _ => comparator,
    };
}
