using System.Numerics;
using System.Runtime.Intrinsics;
using FindingRules.Engine.Compiling.Planes;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Evaluating;

/// <summary>
/// Finds the rules of an instance that are not false, by intersecting one plane for each finding that they test. What is
/// not sent makes no clause false, but none that asks of it true.
/// </summary>
internal static class PlaneReader
{
    /// <summary>Where each tested finding lies; false where a value lies in no cell.</summary>
    public static bool TryLocate(Examination examination, Instance instance, bool isWidened, Span<Cells> cells)
    {
        var tests = instance.Plan.Own.Planes.Tests;
        var values = instance.Values;
        var facts = examination[0].Values;
        for (var i = 0; i < tests.Length; i++)
        {
            var test = tests[i];
            var value = (test.IsOfStudy ? facts : values)[test.Slot];
            cells[i] = isWidened ? test.WidenedCellsOf(value) : test.CellsOf(value);
            if (cells[i] == Cells.Strange) return false;
        }
        return true;
    }

    /// <summary>Some widened measure lies in other cells than the measure itself.</summary>
    public static bool ReachesFurther(Examination examination, Instance instance, ReadOnlySpan<Cells> widened)
    {
        var tests = instance.Plan.Own.Planes.Tests;
        for (var i = 0; i < tests.Length; i++)
        {
            var test = tests[i];
            if (test.IsWidened && test.CellsOf((test.IsOfStudy ? examination[0] : instance).Values[test.Slot]) != widened[i]) return true;
        }
        return false;
    }

    public static void Read(Examination examination, Instance instance, ReadOnlySpan<Cells> cells)
    {
        var planes = instance.Plan.Own.Planes;
        for (var i = 0; i < planes.Blocks.Length; i++)
        {
            var block = planes.Blocks[i];
            var (possible, unsure) = Intersect(block, cells, instance.IsLesion ? block.OfLesions : block.All, examination.Work);
            if (possible == Vector256<ulong>.Zero) continue;
            for (var word = 0; word < PlaneBlock.Size / 64; word++)
                AddRules(planes, (i * PlaneBlock.Size) + (word * 64), possible[word], unsure[word], instance.Candidates);
        }
    }

    private static (Vector256<ulong> Possible, Vector256<ulong> Unsure) Intersect(
        PlaneBlock block, ReadOnlySpan<Cells> cells, Vector256<ulong> possible, WorkCount work)
    {
        var unsure = Vector256<ulong>.Zero;
        var columns = block.Columns;
        for (var i = 0; i < columns.Length; i++)
        {
            ref readonly var column = ref columns[i];
            var at = cells[column.Test];
            if (at.First < 0)
            {
                unsure |= column.Uses;
                continue;
            }
            work.Planes++;
            if (at.First == at.Last)
            {
                possible &= block.Planes[block.PlaneOfCell[column.FirstCell + at.First]];
            }
            else
            {
                var over = column.Over(at);
                possible &= over.Possible;
                unsure |= ~over.Sure;
            }
            if (possible == Vector256<ulong>.Zero) break;
        }
        return (possible, unsure);
    }

    private static void AddRules(RulePlanes planes, int firstClause, ulong possible, ulong unsure, CandidateList candidates)
    {
        for (; possible != 0; possible &= possible - 1)
        {
            var bit = BitOperations.TrailingZeroCount(possible);
            var position = planes.Clauses[firstClause + bit];
            var isSure = (unsure & (1UL << bit)) == 0;
            candidates.Add(position, isSure ? Truth.True : Truth.Unknown, mustAsk: !planes.IsExact[position]);
        }
    }
}
