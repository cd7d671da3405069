using System.Collections.Immutable;
using System.Runtime.Intrinsics;
using FindingRules.Model.Packs;

namespace FindingRules.Engine.Compiling.Planes;

/// <summary>The clauses of a plan's rules in, their planes out.</summary>
internal static class PlaneCompiler
{
    public static RulePlanes Compile(ImmutableArray<RuleEntry> rules, ImmutableArray<int> inLayerOrder, Func<Rule, RuleClauses> clausesOf)
    {
        var clauses = (
            from position in inLayerOrder
            let rule = rules[position]
            let all = clausesOf(rule.Rule)
            from literals in all.Clauses
            select new PlacedClause(position, literals)
            {
                IsPerStructure = rule.Rule.IsPerStructure,
                IsSettled = all.IsExact && rule.Superiors.IsEmpty,
                IsOneOfSeveral = all.Clauses.Length > 1,
            }).ToList();
        var (tests, directCount) = TestsOf(clauses);
        var numbers = new Dictionary<TestKey, int>();
        foreach (var (key, _) in tests) numbers.Add(key, numbers.Count);
        ImmutableArray<FindingTest> made = [.. tests.Select(t => FindingTest.Make(t.Key, t.Value))];
        return new RulePlanes(
            made, directCount, [.. clauses.Chunk(PlaneBlock.Size).Select(block => new BlockCompiler(block, made, numbers).Compile())],
            [.. clauses.Select(c => c.Position)], [.. rules.Select(r => clausesOf(r.Rule).IsExact)], OfSeveral(clauses));
    }

    private static ulong[] OfSeveral(List<PlacedClause> clauses)
    {
        var words = new ulong[(clauses.Count + 63) / 64];
        for (var i = 0; i < clauses.Count; i++)
            if (clauses[i].IsOneOfSeveral)
                words[i >> 6] |= 1UL << i;
        return words;
    }

    // In order of first use, so that the same rules give the same planes.
    private static (List<KeyValuePair<TestKey, List<Literal>>> Tests, int DirectCount) TestsOf(List<PlacedClause> clauses)
    {
        var literals = new OrderedDictionary<TestKey, List<Literal>>();
        foreach (var clause in clauses)
            foreach (var literal in clause.Literals)
            {
                if (!literals.TryGetValue(literal.Test, out var same)) literals.Add(literal.Test, same = []);
                same.Add(literal);
            }
        var slots = new HashSet<int>();
        var byDirectness = literals.ToLookup(l => l.Key.IsDirect && slots.Add(l.Key.Slot));
        return ([.. byDirectness[true], .. byDirectness[false]], byDirectness[true].Count());
    }
}

internal sealed record PlacedClause(int Position, ImmutableArray<Literal> Literals)
{
    public required bool IsPerStructure { get; init; }

    /// <summary>Its rule is decided by clauses alone.</summary>
    public required bool IsSettled { get; init; }

    public required bool IsOneOfSeveral { get; init; }
}

internal sealed class BlockCompiler(PlacedClause[] clauses, ImmutableArray<FindingTest> tests, Dictionary<TestKey, int> numbers)
{
    private readonly List<int> _planeOfCell = [];
    private readonly List<Vector256<ulong>> _planes = [];

    public PlaneBlock Compile()
    {
        _planes.Add(Vector256<ulong>.AllBitsSet);
        var columns =
            from literal in clauses.SelectMany((clause, bit) => clause.Literals.Select(l => (Bit: bit, Literal: l)))
            group literal by numbers[literal.Literal.Test] into asked
            orderby asked.Key
            select Column(asked.Key, [.. asked]);
        return new PlaneBlock([.. columns], [.. _planeOfCell], [.. _planes], Of(_ => true))
        {
            OfLesions = Of(c => !c.IsPerStructure),
            OfSettled = Of(c => c.IsSettled),
        };
    }

    private Vector256<ulong> Of(Func<PlacedClause, bool> isAmong) =>
        Bits(Enumerable.Range(0, clauses.Length).Where(i => isAmong(clauses[i])));

    private PlaneColumn Column(int test, (int Bit, Literal Literal)[] asked)
    {
        _planeOfCell.Add(0);
        var firstCell = _planeOfCell.Count;
        var uses = Bits(asked.Select(a => a.Bit));
        if (tests[test] is not MeasureTest measure)
        {
            for (var cell = 0; cell < tests[test].CellCount; cell++)
                AddPlane(~uses | Bits(asked.Where(a => (((CellLiteral)a.Literal).Cells & (1UL << cell)) != 0).Select(a => a.Bit)));
            return new PlaneColumn(test, firstCell, uses, []);
        }
        CellRun[] runs = [.. asked.Select(a => RunOf(measure, a.Bit, (MeasureLiteral)a.Literal))];
        Sweep(runs, measure.CellCount);
        return new PlaneColumn(test, firstCell, uses, runs);
    }

    private static CellRun RunOf(MeasureTest measure, int bit, MeasureLiteral literal)
    {
        var cells = measure.CellsOf(literal.Region);
        return new CellRun(cells.First, cells.Last, (byte)bit, literal.IsNegated);
    }

    /// <summary>From cell to cell it is counted how many statements of each clause are false; the plane holds those with none.</summary>
    private void Sweep(CellRun[] runs, int cellCount)
    {
        var changes = runs.SelectMany(Changes).OrderBy(c => c.Cell).ToArray();
        Span<int> falseParts = stackalloc int[PlaneBlock.Size];
        falseParts.Clear();
        Span<ulong> plane = [ulong.MaxValue, ulong.MaxValue, ulong.MaxValue, ulong.MaxValue];
        var next = 0;
        for (var cell = 0; cell < cellCount; cell++)
        {
            var before = next;
            for (; next < changes.Length && changes[next].Cell <= cell; next++)
            {
                var (_, clause, change) = changes[next];
                falseParts[clause] += change;
                var bit = 1UL << clause;
                plane[clause >> 6] = falseParts[clause] == 0 ? plane[clause >> 6] | bit : plane[clause >> 6] & ~bit;
            }
            if (cell == 0 || next > before) AddPlane(Vector256.Create<ulong>(plane));
            else _planeOfCell.Add(_planes.Count - 1);
        }
    }

    private static IEnumerable<(int Cell, byte Clause, int Change)> Changes(CellRun run)
    {
        var inside = run.IsNegated ? 1 : -1;
        if (!run.IsNegated) yield return (0, run.Clause, 1);
        yield return (run.First, run.Clause, inside);
        yield return (run.Last + 1, run.Clause, -inside);
    }

    private void AddPlane(Vector256<ulong> plane)
    {
        _planeOfCell.Add(_planes.Count);
        _planes.Add(plane);
    }

    private static Vector256<ulong> Bits(IEnumerable<int> bits)
    {
        Span<ulong> words = stackalloc ulong[PlaneBlock.Size / 64];
        words.Clear();
        foreach (var bit in bits) words[bit >> 6] |= 1UL << bit;
        return Vector256.Create<ulong>(words);
    }
}
