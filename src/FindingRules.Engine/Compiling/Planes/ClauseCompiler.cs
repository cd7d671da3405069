using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;

namespace FindingRules.Engine.Compiling.Planes;

/// <summary>
/// A condition in, clauses out. De Morgan's laws and distributivity hold in strong Kleene logic, so nothing changes; the
/// laws that do not hold (a statement and its contrary cancel) are not used.
/// </summary>
internal sealed class ClauseCompiler(FindingSlots slots, bool isStudyRule)
{
    private const int MostClauses = 16;

    private readonly LiteralCompiler _literals = new(slots, isStudyRule);

    public static RuleClauses Compile(Rule rule, FindingSlots slots) =>
        new ClauseCompiler(slots, rule.Scope.IsStudy).Of(rule.Condition, isNegated: false);

    private RuleClauses Of(Condition condition, bool isNegated) => condition switch
    {
        AllOf all => isNegated ? Or(all.Parts, isNegated) : And(all.Parts, isNegated),
        AnyOf any => isNegated ? And(any.Parts, isNegated) : Or(any.Parts, isNegated),
        Negation negation => Of(negation.Part, !isNegated),
        Statement statement => _literals.Of(statement, isNegated) is { } literal ? RuleClauses.Of(literal) : RuleClauses.Silent,
        _ => RuleClauses.Silent,
    };

    private RuleClauses And(ImmutableArray<Condition> parts, bool isNegated)
    {
        var (clauses, isExact) = (RuleClauses.Silent.Clauses, true);
        foreach (var part in parts)
        {
            var next = Of(part, isNegated);
            isExact &= next.IsExact;
            if (clauses.Length * next.Clauses.Length > MostClauses) isExact = false;
            else clauses = [.. clauses.SelectMany(left => next.Clauses.Select(right => Joined(left, right)))];
        }
        return new RuleClauses(clauses, isExact);
    }

    private RuleClauses Or(ImmutableArray<Condition> parts, bool isNegated)
    {
        var (clauses, isExact) = (ImmutableArray<ImmutableArray<Literal>>.Empty, true);
        foreach (var part in parts)
        {
            var next = Of(part, isNegated);
            isExact &= next.IsExact;
            foreach (var clause in next.Clauses) clauses = With(clauses, clause);
        }
        return clauses.Length <= MostClauses ? new RuleClauses(clauses, isExact) : RuleClauses.Silent;
    }

    /// <summary>Both of one clause: what they ask of one finding's cells becomes one literal.</summary>
    private static ImmutableArray<Literal> Joined(ImmutableArray<Literal> left, ImmutableArray<Literal> right)
    {
        var joined = left;
        foreach (var literal in right)
        {
            if (joined.Contains(literal)) continue;
            var same = literal is CellLiteral cells ? joined.FirstOrDefault(l => l is CellLiteral && l.Test == cells.Test) : null;
            joined = same is CellLiteral known
                ? joined.Replace(known, known with { Cells = known.Cells & ((CellLiteral)literal).Cells })
                : joined.Add(literal);
        }
        return joined;
    }

    /// <summary>One more clause: <c>echo anechoic or echo hypoechoic</c> is one set of cells, and not two clauses.</summary>
    private static ImmutableArray<ImmutableArray<Literal>> With(
        ImmutableArray<ImmutableArray<Literal>> clauses, ImmutableArray<Literal> clause)
    {
        if (clause is not [CellLiteral added]) return clauses.Add(clause);
        for (var i = 0; i < clauses.Length; i++)
            if (clauses[i] is [CellLiteral known] && known.Test == added.Test)
                return clauses.SetItem(i, [known with { Cells = known.Cells | added.Cells }]);
        return clauses.Add(clause);
    }
}
