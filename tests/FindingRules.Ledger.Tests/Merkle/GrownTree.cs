using FindingRules.Ledger.Merkle;

namespace FindingRules.Ledger.Tests.Merkle;

/// <summary>A tree all of whose leaves are at hand; its hashes are computed from them, by the definition.</summary>
internal sealed class GrownTree
{
    public GrownTree(ulong size) =>
        Leaves = [.. Enumerable.Range(0, (int)size).Select(i => TreeHash.Leaf(BitConverter.GetBytes((ulong)i)))];

    public byte[][] Leaves { get; }

    public byte[] Root() => Hash(new LeafRange(0, (ulong)Leaves.Length));

    public List<byte[]> Prove(IEnumerable<LeafRange> path) => [.. path.Select(Hash)];

    private byte[] Hash(LeafRange range) => range.Count switch
    {
        0 => TreeHash.Empty.ToArray(),
        1 => Leaves[range.Start],
        _ => TreeHash.Node(Hash(range with { End = range.Middle }), Hash(range with { Start = range.Middle })),
    };
}
