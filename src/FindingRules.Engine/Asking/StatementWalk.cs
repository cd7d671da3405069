using FindingRules.Engine.Explaining;
using FindingRules.Model.Conditions;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Asking;

/// <summary>What the statements of a condition read, and whether of the rule's own subject.</summary>
internal static class StatementWalk
{
    /// <param name="isOwn">Whether <see cref="Place.Own"/> still is the rule's subject: inside a count it is not.</param>
    public static IEnumerable<(Statement Statement, bool IsOwn)> Of(Condition condition, bool isOwn = true) => condition switch
    {
        AllOf all => all.Parts.SelectMany(p => Of(p, isOwn)),
        AnyOf any => any.Parts.SelectMany(p => Of(p, isOwn)),
        Negation negation => Of(negation.Part, isOwn),
        Quantified quantified => Of(quantified.Where, isOwn: false),
        Statement statement => [(statement, isOwn)],
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>Findings with their places; a null finding stands for every finding of the structure there.</summary>
    public static IEnumerable<(Place Place, Finding? Finding)> Findings(Statement statement) => statement switch
    {
        ValueStatement s => [(s.Place, s.Finding)],
        SignStatement s => [(s.Place, s.Finding)],
        ExtentStatement s => [(s.Place, s.Finding)],
        AssessedStatement s => [(s.Place, s.Finding)],
        NotAssessableStatement s => [(s.Place, s.Finding)],
        ComparisonStatement s => Measures([s.Left, s.Right]),
        BetweenStatement s => Measures([s.Value, s.Low, s.High]),
        _ => [],
    };

    private static IEnumerable<(Place, Finding?)> Measures(IEnumerable<QuantityExpression> operands) =>
        operands.SelectMany(o => MeasuresIn.Of(o, Place.Own)).Select(m => (m.Place, (Finding?)m.Finding)).Distinct();

    public static bool IsOwn(Place place, Scope scope, bool isOwn) =>
        isOwn && !place.IsEarlier && place.Relation == (scope.IsStudy ? PlaceRelation.Study : PlaceRelation.Own);
}
