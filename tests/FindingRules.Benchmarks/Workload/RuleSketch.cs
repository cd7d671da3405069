using System.Collections.Immutable;

namespace FindingRules.Benchmarks.Workload;

/// <summary>One of the findings that each structure of the workload has.</summary>
public enum FindingSort
{
    Thickness,
    Length,
    Echo,
    State,
    Shadowing,
}

public enum Relation
{
    AtLeast,
    Below,

    /// <summary>One of the values whose bits are set.</summary>
    OneOf,
}

/// <param name="Operand">Tenths of a millimetre, or a bit for each value.</param>
public readonly record struct Comparison(FindingSort Finding, Relation Relation, int Operand);

/// <summary>A rule without words: all of its comparisons, of one structure's findings.</summary>
public sealed record RuleSketch(int Number, int Structure, ImmutableArray<Comparison> Comparisons);
