using System.Collections.Immutable;

namespace FindingRules.Engine.Compiling.Planes;

/// <summary>
/// The clauses of a plan's rules as bits, <see cref="PlaneBlock.Size"/> to a block, and for each cell of each finding
/// that they test a plane: the clauses that the cell does not make false. A study's cells choose one plane for each
/// finding, and what is in all of them is not false.
/// </summary>
/// <param name="Clauses">By number: in order of layer, then of rule.</param>
/// <param name="IsExact">By position of the rule: its clauses say all that it says.</param>
/// <param name="Tests">First those that are settled by what is sent of one finding of the subject, and are alone in that.</param>
/// <param name="DirectCount">So many are in <see cref="Direct"/>.</param>
/// <param name="OfSeveral">A bit for each clause: its rule has several.</param>
internal sealed record RulePlanes(
    ImmutableArray<FindingTest> Tests, int DirectCount, ImmutableArray<PlaneBlock> Blocks, int[] Clauses, bool[] IsExact, ulong[] OfSeveral)
{
    /// <summary>How many words of 64 bits have a bit for each clause.</summary>
    public int WordCount => OfSeveral.Length;

    /// <summary>By slot of the subject: the test that a value can be given as soon as it is put there.</summary>
    public DirectTest?[] Direct { get; } = DirectOf(Tests.AsSpan()[..DirectCount]);

    private static DirectTest?[] DirectOf(ReadOnlySpan<FindingTest> tests)
    {
        var slotCount = 0;
        foreach (var test in tests) slotCount = Math.Max(slotCount, test.Slot + 1);
        var direct = new DirectTest?[slotCount];
        for (var i = 0; i < tests.Length; i++) direct[tests[i].Slot] = new DirectTest(tests[i], i);
        return direct;
    }
}

/// <param name="Number">Among the tests.</param>
internal sealed record DirectTest(FindingTest Test, int Number);
