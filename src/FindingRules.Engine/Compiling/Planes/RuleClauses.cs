using System.Collections.Immutable;

namespace FindingRules.Engine.Compiling.Planes;

/// <summary>
/// A condition as an <c>or</c> of clauses, each an <c>and</c> of literals.
/// </summary>
/// <param name="IsExact">
/// The clauses say all that the condition says. Otherwise parts were left out of them: where every clause is false the
/// condition is false, and only elsewhere it must be asked itself.
/// </param>
internal sealed record RuleClauses(ImmutableArray<ImmutableArray<Literal>> Clauses, bool IsExact)
{
    /// <summary>Says nothing, so that the condition itself must always be asked.</summary>
    public static RuleClauses Silent { get; } = new([[]], IsExact: false);

    public static RuleClauses Of(Literal literal) => new([[literal]], IsExact: true);
}
