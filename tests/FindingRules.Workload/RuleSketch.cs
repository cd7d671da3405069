using System.Collections.Immutable;

namespace FindingRules.Workload;

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
public readonly record struct Comparison(FindingSort Finding, Relation Relation, int Operand)
{
    /// <summary>Those whose bits are set.</summary>
    public IEnumerable<int> Values
    {
        get
        {
            var bits = Operand;
            return Enumerable.Range(0, 8).Where(v => (bits & (1 << v)) != 0);
        }
    }
}

/// <summary>A rule without words: all of its comparisons, of one structure's findings.</summary>
public sealed record RuleSketch(int Number, int Structure, ImmutableArray<Comparison> Comparisons);
