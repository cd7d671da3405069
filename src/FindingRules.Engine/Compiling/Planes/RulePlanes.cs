using System.Collections.Immutable;

namespace FindingRules.Engine.Compiling.Planes;

/// <summary>
/// The clauses of a plan's rules as bits, <see cref="PlaneBlock.Size"/> to a block, and for each cell of each finding
/// that they test a plane: the clauses that the cell does not make false. A study's cells choose one plane for each
/// finding, and what is in all of them is not false.
/// </summary>
/// <param name="Clauses">By number: in order of layer, then of rule.</param>
/// <param name="IsExact">By position of the rule: its clauses say all that it says.</param>
internal sealed record RulePlanes(
    ImmutableArray<FindingTest> Tests, ImmutableArray<PlaneBlock> Blocks, int[] Clauses, bool[] IsExact);
