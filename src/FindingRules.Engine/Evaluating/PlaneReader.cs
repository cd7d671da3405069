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
            var at = isWidened ? test.WidenedCellsOf(value) : test.CellsOf(value);
            if (at.IsStrange) return false;
            cells[i] = at;
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
        var blocks = planes.Blocks.AsSpan();
        var isLesion = instance.IsLesion;
        var read = 0;
        for (var i = 0; i < blocks.Length; i++)
        {
            var block = blocks[i];
            var possible = isLesion ? block.OfLesions : block.All;
            var unsure = Vector256<ulong>.Zero;
            foreach (ref readonly var column in block.Columns.AsSpan())
            {
                var at = cells[column.Test];
                if (at.First < 0)
                {
                    unsure |= column.Uses;
                    continue;
                }
                read++;
                if (at.First == at.Last)
                {
                    possible &= block.Planes[block.PlaneOfCell[column.FirstCell + at.First]];
                }
                else
                {
                    column.Over(at, out var mayBe, out var surely);
                    possible &= mayBe;
                    unsure |= ~surely;
                }
                if (possible == Vector256<ulong>.Zero) break;
            }
            if (possible != Vector256<ulong>.Zero) AddRules(planes, i * PlaneBlock.Size, possible, unsure, instance.Candidates);
        }
        examination.Work.Planes += read;
    }

    private static void AddRules(
        RulePlanes planes, int firstClause, Vector256<ulong> possible, Vector256<ulong> unsure, CandidateList candidates)
    {
        Span<ulong> words = stackalloc ulong[PlaneBlock.Size / 64];
        Span<ulong> unsureWords = stackalloc ulong[PlaneBlock.Size / 64];
        possible.CopyTo(words);
        unsure.CopyTo(unsureWords);
        var clauses = planes.Clauses;
        var isExact = planes.IsExact;
        for (var i = 0; i < words.Length; i++)
            for (var word = words[i]; word != 0; word &= word - 1)
            {
                var bit = BitOperations.TrailingZeroCount(word);
                var position = clauses[firstClause + (64 * i) + bit];
                var isSure = ((unsureWords[i] >> bit) & 1) == 0;
                candidates.Add(position, isSure ? Truth.True : Truth.Unknown, mustAsk: !isExact[position]);
            }
    }
}
