using FindingRules.Model.Conditions;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reference;

/// <summary>The truth of a condition for a subject.</summary>
internal sealed class ConditionTruth(Whereabouts whereabouts, Answers answers)
{
    private readonly StatementTruth _plain = new(whereabouts, answers, isWidened: false);
    private readonly StatementTruth _widened = new(whereabouts, answers, isWidened: true);

    public Truth Of(Condition condition, Subject subject) => Of(condition, subject, _plain);

    public Truth OfWidened(Condition condition, Subject subject) => Of(condition, subject, _widened);

    /// <param name="own">What the rule is bound to, or inside a quantifier the structure that it counts.</param>
    private static Truth Of(Condition condition, Subject own, StatementTruth statements) => condition switch
    {
        AllOf all => all.Parts.Select(p => Of(p, own, statements)).Aggregate(Truth.True, Kleene.And),
        AnyOf any => any.Parts.Select(p => Of(p, own, statements)).Aggregate(Truth.False, Kleene.Or),
        Negation not => Kleene.Not(Of(not.Part, own, statements)),
        Quantified quantified => Count(quantified, own, statements),
        Statement statement => statements.Of(statement, own),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static Truth Count(Quantified quantified, Subject from, StatementTruth statements)
    {
        var truths = quantified.Range.Structures
            .SelectMany(structure => Counted(structure, from.Side))
            .Select(own => own is null ? Truth.Unknown : Of(quantified.Where, own, statements))
            .ToList();
        return quantified.Quantifier switch
        {
            Quantifier.Any => truths.Aggregate(Truth.False, Kleene.Or),
            Quantifier.Every => truths.Aggregate(Truth.True, Kleene.And),
            Quantifier.No => Kleene.Not(truths.Aggregate(Truth.False, Kleene.Or)),
            _ => Kleene.AtLeast(quantified.Count, truths.Count(t => t == Truth.True), truths.Count(t => t == Truth.Unknown)),
        };
    }

    /// <summary>
    /// A paired structure counts on the side of what is asked from; on both, where that is the study or has no side.
    /// Null: the structure on a side that was not stated.
    /// </summary>
    private static IEnumerable<Subject?> Counted(Structure structure, Side from) => (structure.IsPaired, from) switch
    {
        (false, _) => [new Subject(structure, Side.None, null)],
        (true, Side.Unknown) => [null],
        (true, Side.None) => [new Subject(structure, Side.Left, null), new Subject(structure, Side.Right, null)],
        (true, var side) => [new Subject(structure, side, null)],
    };
}
