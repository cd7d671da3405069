using System.Runtime.Intrinsics;

namespace FindingRules.Engine.Compiling.Planes;

/// <summary>As many clauses as one vector has bits.</summary>
internal sealed class PlaneBlock(
    PlaneColumn[] columns, int[] planeOfCell, Vector256<ulong>[] planes, Vector256<ulong> all)
{
    public const int Size = 256;

    public PlaneColumn[] Columns { get; } = columns;

    /// <summary>For what is not known and then the cells of each column, from its first on: which plane.</summary>
    public int[] PlaneOfCell { get; } = planeOfCell;

    public Vector256<ulong>[] Planes { get; } = planes;

    public Vector256<ulong> All { get; } = all;

    /// <summary>The clauses of rules that are bound to each lesion; the others are bound to the structure.</summary>
    public required Vector256<ulong> OfLesions { get; init; }

    /// <summary>The clauses of rules that they decide alone: they say all, and the rule yields to none.</summary>
    public required Vector256<ulong> OfSettled { get; init; }
}

/// <summary>What the clauses of a block ask of one finding.</summary>
/// <param name="Test">Position among the plan's tests.</param>
/// <param name="FirstCell">Where its cells begin among the block's. Just before them is what is not known; it makes nothing false.</param>
/// <param name="Uses">The clauses that ask anything of it.</param>
/// <param name="Runs">Of a measure: each statement's own cells, for a value that may lie in several.</param>
internal readonly record struct PlaneColumn(int Test, int FirstCell, Vector256<ulong> Uses, CellRun[] Runs)
{
    /// <summary>
    /// Each statement is judged alone, as Kleene does: two of one clause may each be unknown though they cannot both be true.
    /// </summary>
    public void Over(Cells cells, out Vector256<ulong> mayBe, out Vector256<ulong> surely)
    {
        Span<ulong> possible = [ulong.MaxValue, ulong.MaxValue, ulong.MaxValue, ulong.MaxValue];
        Span<ulong> sure = [ulong.MaxValue, ulong.MaxValue, ulong.MaxValue, ulong.MaxValue];
        foreach (var run in Runs)
        {
            var meets = cells.First <= run.Last && cells.Last >= run.First;
            var isWithin = cells.First >= run.First && cells.Last <= run.Last;
            var bit = ~(1UL << run.Clause);
            if (run.IsNegated ? isWithin : !meets) possible[run.Clause >> 6] &= bit;
            if (run.IsNegated ? meets : !isWithin) sure[run.Clause >> 6] &= bit;
        }
        (mayBe, surely) = (Vector256.Create<ulong>(possible), Vector256.Create<ulong>(sure));
    }
}

/// <summary>One statement of a clause about a measure: true in a run of cells, or with <paramref name="IsNegated"/> outside.</summary>
internal readonly record struct CellRun(int First, int Last, byte Clause, bool IsNegated);
