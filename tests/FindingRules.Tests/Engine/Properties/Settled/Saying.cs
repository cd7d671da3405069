using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Vocabularies;
using static FindingRules.Testing.Generators.ModelOf;

namespace FindingRules.Tests.Engine.Properties.Settled;

/// <summary>Rules and conditions about the <see cref="Shoulder"/>, made without text.</summary>
internal static class Saying
{
    private static readonly Caution _note = new("note", Says("note"), [], Nowhere);

    public static Place Own => Place.Own;

    public static Place Facts => Place.Study;

    public static Place OtherSide => new(PlaceRelation.Contralateral);

    public static Place Beside(string structure) => new(PlaceRelation.Ipsilateral, Shoulder.Structure(structure));

    public static Place Opposite(string structure) => new(PlaceRelation.Contralateral, Shoulder.Structure(structure));

    public static Place Earlier(this Place place) => place with { IsEarlier = true };

    /// <summary>A rule that gives nothing but a caution.</summary>
    public static Rule Rule(string id, Scope scope, Condition condition) => Rule(id, scope, condition, [], []);

    public static Rule Rule(string id, Scope scope, Condition condition, Conclusion conclusion, params string[] over) =>
        Rule(id, scope, condition, [conclusion], over);

    public static TopicConclusion Gives(Topic topic, string value) => new(topic, topic.Find(value)!, Nowhere);

    public static HoldConclusion Holds(Topic topic) => new(topic, Nowhere);

    public static ValueStatement Is(this Place place, string finding, params string[] values) =>
        new(place, Shoulder.Finding(finding), values.ToImmutableSortedSet(StringComparer.Ordinal), Nowhere);

    public static SignStatement Has(this Place place, string sign) => new(place, Shoulder.Finding(sign), Nowhere);

    public static TopicStatement Is(this Place place, Topic topic, params string[] values) =>
        new(place, topic, values.ToImmutableSortedSet(StringComparer.Ordinal), Nowhere);

    public static AssessedStatement Assessed(this Place place, string? finding = null) =>
        new(place, finding is null ? null : Shoulder.Finding(finding), Nowhere);

    public static NotAssessableStatement NotAssessable(this Place place, string finding) => new(place, Shoulder.Finding(finding), Nowhere);

    public static ExtentStatement Fluid(this Place place, ExtentRelation relation, int from, int to) =>
        new(place, Shoulder.Finding("fluid"), relation, from, to, Nowhere);

    public static MeasureExpression The(this Place place, string measure) => new(
        place, Shoulder.Finding(measure), ((MeasureType)Shoulder.Finding(measure).Type).Unit.Dimension, Nowhere);

    public static ConstantExpression Mm(int number) => Of(number, Unit.Millimetre);

    public static ConstantExpression Of(Rational number, Unit unit) => new(new Quantity(number, unit), Nowhere);

    public static ArithmeticExpression Calculate(QuantityExpression left, ArithmeticOperator by, QuantityExpression right) => new(
        by, left, right,
        by switch
        {
            ArithmeticOperator.Multiply => left.Dimension * right.Dimension,
            ArithmeticOperator.Divide => left.Dimension / right.Dimension,
            _ => left.Dimension,
        },
        Nowhere);

    public static DerivedExpression Derived(this Place place, string name, QuantityExpression expression) => new(
        place, new DerivedMeasure(name, name, Shoulder.Cuff, Unit.Millimetre, expression, Nowhere), Nowhere);

    public static ComparisonStatement Compare(QuantityExpression left, Comparator comparator, QuantityExpression right) =>
        new(left, comparator, right, Nowhere);

    public static ComparisonStatement Above(this QuantityExpression left, QuantityExpression right) => Compare(left, Comparator.Above, right);

    public static ComparisonStatement Below(this QuantityExpression left, QuantityExpression right) => Compare(left, Comparator.Below, right);

    public static BetweenStatement Between(this QuantityExpression value, QuantityExpression low, QuantityExpression high) =>
        new(value, low, high, Nowhere);

    public static Negation Not(Condition part) => new(part, Nowhere);

    public static AllOf And(params ImmutableArray<Condition> parts) => new(parts, Nowhere);

    public static AnyOf Or(params ImmutableArray<Condition> parts) => new(parts, Nowhere);

    public static Quantified Any(Scope range, Condition where) => new(Quantifier.Any, 0, range, where, Nowhere);

    public static Quantified Every(Scope range, Condition where) => new(Quantifier.Every, 0, range, where, Nowhere);

    public static Quantified No(Scope range, Condition where) => new(Quantifier.No, 0, range, where, Nowhere);

    public static Quantified AtLeast(int count, Scope range, Condition where) => new(Quantifier.AtLeast, count, range, where, Nowhere);

    private static Rule Rule(string id, Scope scope, Condition condition, ImmutableArray<Conclusion> conclusions, string[] over) => new(
        id, scope, condition, conclusions.IsEmpty ? [new CautionConclusion(_note, Nowhere)] : conclusions, Nowhere)
    {
        Text = id,
        Because = "Made in a test.",
        Revision = "000000000000",
        IsPerStructure = conclusions.Any(c => c is TopicConclusion { Topic.IsPerStructure: true } or HoldConclusion { Topic.IsPerStructure: true }),
        Over = [.. over],
    };
}
