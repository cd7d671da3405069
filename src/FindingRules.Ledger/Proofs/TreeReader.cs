using System.Collections.Immutable;
using System.Data.Common;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Merkle;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Proofs;

/// <summary>Reads hashes of the stored tree.</summary>
internal static class TreeReader
{
    /// <summary>The hashes of a proof.</summary>
    public static async Task<ImmutableArray<ReadOnlyMemory<byte>>> ReadAsync(
        DbConnection connection, IEnumerable<LeafRange> path, string name)
    {
        var hashes = ImmutableArray.CreateBuilder<ReadOnlyMemory<byte>>();
        foreach (var range in path) hashes.Add(await HashAsync(connection, range, name));
        return hashes.ToImmutable();
    }

    public static async Task<byte[]> RootAsync(DbConnection connection, long size, string name) => size == 0
        ? TreeHash.Empty.ToArray()
        : await HashAsync(connection, new LeafRange(0, (ulong)size), name);

    private static async Task<byte[]> HashAsync(DbConnection connection, LeafRange range, string name)
    {
        var subtrees = new List<byte[]>();
        foreach (var (level, place) in range.Subtrees()) subtrees.Add(await SubtreeAsync(connection, level, (long)place, name));
        return ProofPath.Combine(subtrees);
    }

    private static async Task<byte[]> SubtreeAsync(DbConnection connection, int level, long place, string name)
    {
        var above = level % KeptNode.LevelStep;
        var kept = level - above;
        var (from, count) = (place << above, 1L << above);
        var hashes = kept == 0
            ? await connection.ListAsync(
                r => r.GetFieldValue<byte[]>(0),
                "SELECT leaf FROM record WHERE position >= @from AND position < @to ORDER BY position", ("@from", from),
                    ("@to", from + count))
            : await connection.ListAsync(
                r => r.GetFieldValue<byte[]>(0),
                "SELECT hash FROM inner_hash WHERE level = @level AND place >= @from AND place < @to ORDER BY place",
                ("@level", kept), ("@from", from), ("@to", from + count));
        if (hashes.Count != count) throw Fail.Damaged(name, "hashes of its tree are missing");
        while (hashes.Count > 1) hashes = [.. hashes.Chunk(2).Select(pair => TreeHash.Node(pair[0], pair[1]))];
        return hashes[0];
    }
}
