using System.Data.Common;
using System.Runtime.CompilerServices;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Indexing;

/// <summary>Reads the positions that have words.</summary>
internal static class PostingReader
{
    private const int PageRows = 64;
    private const int WeighedRows = 100;

    /// <summary>The words, the rarest first; null where one of them is nowhere.</summary>
    public static async Task<IReadOnlyList<long>?> RarestFirstAsync(DbConnection connection, IReadOnlyList<long> words)
    {
        if (words.Count == 1) return words;
        var weights = new List<(long Word, long Bytes)>();
        foreach (var word in words)
            weights.Add((word, await connection.ScalarAsync<long>(
                "SELECT coalesce(sum(length(positions)), 0) FROM "
                + "(SELECT positions FROM posting WHERE word = @word ORDER BY chunk DESC LIMIT @most) few",
                ("@word", word), ("@most", (long)WeighedRows))));
        return weights.Any(w => w.Bytes == 0) ? null : [.. weights.OrderBy(w => w.Bytes).Select(w => w.Word)];
    }

    /// <summary>
    /// Of the rows of the first word from the one of <paramref name="before"/> down to the one of <paramref name="first"/>: the positions
    /// that have all words, each row by itself.
    /// </summary>
    public static async IAsyncEnumerable<(long Chunk, Places Places)> ReadAsync(
        DbConnection connection, IReadOnlyList<long> words, long first, long before,
        [EnumeratorCancellation] CancellationToken cancellation = default)
    {
        var (bottom, top) = (Places.ChunkOf(first), Places.ChunkOf(before - 1));
        while (top >= bottom)
        {
            cancellation.ThrowIfCancellationRequested();
            var rows = await connection.ListAsync(
                ReadRow, "SELECT chunk, positions FROM posting WHERE word = @word AND chunk <= @top AND chunk >= @bottom "
                + "ORDER BY chunk DESC LIMIT @most",
                ("@word", words[0]), ("@top", top), ("@bottom", bottom), ("@most", (long)PageRows));
            foreach (var word in words.Skip(1)) await IntersectAsync(connection, rows, word);
            foreach (var row in rows) yield return row;
            if (rows.Count < PageRows) yield break;
            top = rows[^1].Chunk - 1;
        }
    }

    private static async Task IntersectAsync(DbConnection connection, List<(long Chunk, Places Places)> rows, long word)
    {
        if (rows.Count == 0) return;
        // Numbers that were computed here, not texts that somebody sent.
        var chunks = string.Join(',', rows.Select(r => r.Chunk));
        var others = (await connection.ListAsync(
            ReadRow, $"SELECT chunk, positions FROM posting WHERE word = @word AND chunk IN ({chunks})", ("@word", word)))
            .ToDictionary(r => r.Chunk, r => r.Places);
        var none = new Places();
        foreach (var (chunk, places) in rows) places.IntersectWith(others.GetValueOrDefault(chunk) ?? none);
    }

    private static (long Chunk, Places Places) ReadRow(DbDataReader row) => (row.GetInt64(0), Places.Read(row.GetFieldValue<byte[]>(1)));
}
