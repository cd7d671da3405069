using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using FindingRules.Engine.Compiling.Planes;

namespace FindingRules.Engine.Evaluating;

/// <summary>
/// Finds the rules of an instance that are not false, by intersecting one plane for each finding that they test. What is
/// not sent makes no clause false, but none that asks of it true.
/// </summary>
internal static class PlaneReader
{
    /// <summary>Where each tested finding lies; false where a value lies in no cell.</summary>
    public static bool TryLocate(Examination examination, Instance instance)
    {
        var planes = instance.Plan.Own.Planes;
        var cells = instance.Cells;
        for (var i = instance.IsLocated ? planes.DirectCount : 0; i < cells.Length; i++)
        {
            var test = planes.Tests[i];
            cells[i] = test.CellsOf((test.IsOfStudy ? examination[0] : instance).Values[test.Slot]);
        }
        instance.IsLocated = true;
        return !HasStrange(cells);
    }

    /// <summary>The same with the measures widened.</summary>
    public static bool TryLocateWidened(Examination examination, Instance instance, out ReadOnlySpan<Cells> cells)
    {
        var planes = instance.Plan.Own.Planes;
        var room = examination.CellsFor(planes);
        cells = room;
        for (var i = 0; i < room.Length; i++)
        {
            var test = planes.Tests[i];
            room[i] = test.IsWidened
                ? test.WidenedCellsOf((test.IsOfStudy ? examination[0] : instance).Values[test.Slot])
                : instance.Cells[i];
        }
        return !HasStrange(cells);
    }

    /// <summary>
    /// What the planes decide alone goes into <paramref name="settled"/>, the other rules that may not be false among the
    /// instance's candidates.
    /// </summary>
    public static void Read(Examination examination, Instance instance, ReadOnlySpan<Cells> cells, SettledBits settled)
    {
        var planes = instance.Plan.Own.Planes;
        var blocks = planes.Blocks.AsSpan();
        settled.Use(planes);
        var (read, hasRuns) = (0, HasRuns(cells));
        for (var i = 0; i < blocks.Length; i++)
        {
            var block = blocks[i];
            var possible = instance.IsLesion ? block.OfLesions : block.All;
            var unsure = Vector256<ulong>.Zero;
            if (hasRuns) IntersectRuns(block, cells, ref possible, ref unsure);
            else Intersect(block, cells, ref possible, ref unsure);
            read += block.Columns.Length;
            var ofSettled = possible & block.OfSettled;
            settled.Set(i, ofSettled, unsure & ofSettled);
            if (possible != ofSettled) Collect(planes, i, possible ^ ofSettled, unsure, instance.Candidates);
        }
        examination.Work.Planes += read;
    }

    // A method of its own without calls, so that the vectors stay in registers.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Intersect(
        PlaneBlock block, ReadOnlySpan<Cells> cells, ref Vector256<ulong> possible, ref Vector256<ulong> unsure)
    {
        var planes = block.Planes;
        var planeOfCell = block.PlaneOfCell;
        var (mayBe, isOpen) = (possible, unsure);
        foreach (ref readonly var column in block.Columns.AsSpan())
        {
            // Without a branch for what is not known, which comes in no order.
            var cell = cells[column.Test].First;
            mayBe &= planes[planeOfCell[column.FirstCell + cell]];
            isOpen |= column.Uses & Vector256.Create((long)(cell >> 31)).AsUInt64();
        }
        (possible, unsure) = (mayBe, isOpen);
    }

    /// <summary>The same where a value may lie in several cells.</summary>
    private static void IntersectRuns(
        PlaneBlock block, ReadOnlySpan<Cells> cells, ref Vector256<ulong> possible, ref Vector256<ulong> unsure)
    {
        foreach (ref readonly var column in block.Columns.AsSpan())
        {
            var at = cells[column.Test];
            if (at.First == at.Last)
            {
                possible &= block.Planes[block.PlaneOfCell[column.FirstCell + at.First]];
                if (at.First < 0) unsure |= column.Uses;
            }
            else
            {
                column.Over(at, out var mayBe, out var surely);
                possible &= mayBe;
                unsure |= ~surely;
            }
        }
    }

    private static bool HasStrange(ReadOnlySpan<Cells> cells)
    {
        foreach (var at in cells)
            if (at.IsStrange)
                return true;
        return false;
    }

    private static bool HasRuns(ReadOnlySpan<Cells> cells)
    {
        var widths = 0;
        foreach (var at in cells) widths |= at.Width;
        return widths != 0;
    }

    private static void Collect(
        RulePlanes planes, int block, Vector256<ulong> possible, Vector256<ulong> unsure, CandidateList candidates)
    {
        Span<ulong> words = stackalloc ulong[PlaneBlock.Size / 64];
        Span<ulong> unsureWords = stackalloc ulong[PlaneBlock.Size / 64];
        possible.CopyTo(words);
        unsure.CopyTo(unsureWords);
        for (var i = 0; i < words.Length; i++)
            SettledBits.Collect(planes, (words.Length * block) + i, words[i], unsureWords[i], candidates);
    }
}
