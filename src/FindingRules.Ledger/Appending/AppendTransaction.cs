using System.Data.Common;
using FindingRules.Ledger.Merkle;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Appending;

/// <summary>What became of a record in a transaction: where it stands, or where the one stands that its key was used for.</summary>
internal readonly record struct Placed(PlacedAs As, long Position);

internal enum PlacedAs
{
    New,
    Repeated,
    KeyTaken,
}

/// <summary>Gives records their places in the tree and writes them, all or none.</summary>
internal static class AppendTransaction
{
    public static Task<Placed[]> RunAsync(ILedgerDatabase database, IReadOnlyList<NewRecord> records) =>
        database.WriteAsync(WriteKind.Append, connection => RunAsync(database, connection, records));

    public static async Task<Placed[]> RunAsync(ILedgerDatabase database, DbConnection connection, IReadOnlyList<NewRecord> records)
    {
        var tree = await database.LockTreeAsync(connection);
        var first = tree.Size;
        var keys = await FindKeysAsync(connection, records);
        var added = new List<NewRecord>(records.Count);
        var inner = new List<KeptNode>();
        var placed = new Placed[records.Count];
        for (var i = 0; i < records.Count; i++)
        {
            var record = records[i];
            if (record.Retry is { } retry)
            {
                var key = Convert.ToHexString(retry.Key);
                if (keys.TryGetValue(key, out var earlier))
                {
                    var isSame = earlier.Request.AsSpan().SequenceEqual(retry.Request);
                    placed[i] = new Placed(isSame ? PlacedAs.Repeated : PlacedAs.KeyTaken, earlier.Position);
                    continue;
                }
                keys.Add(key, (retry.Request, tree.Size));
            }
            placed[i] = new Placed(PlacedAs.New, tree.Size);
            added.Add(record);
            tree.Append(record.Leaf, inner);
        }
        if (added.Count > 0) await database.InsertAsync(connection, new AppendedRows(first, added, inner, tree));
        return placed;
    }

    private static async Task<Dictionary<string, (byte[] Request, long Position)>> FindKeysAsync(
        DbConnection connection, IReadOnlyList<NewRecord> records)
    {
        var found = new Dictionary<string, (byte[], long)>(StringComparer.Ordinal);
        foreach (var keys in records.Select(r => r.Retry?.Key).OfType<byte[]>().Chunk(RetryRows.MostAtOnce))
            foreach (var (key, request, position) in await RetryRows.ListAsync(connection, keys))
                found[Convert.ToHexString(key)] = (request, position);
        return found;
    }
}
