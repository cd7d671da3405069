using System.Data.Common;
using FindingRules.Ledger.Indexing;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Storage;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Ledger.Searching;

/// <summary>
/// Walks the records that have the rarest of the words, from the newest, and keeps those that have the others too. So many are looked at
/// for one page, and no more.
/// </summary>
internal static class Search
{
    private const int MostLookedAt = 20_000;
    private const int MostCounted = 5_000;

    public static async Task<LedgerPage> RunAsync(DbConnection connection, LedgerQuery query)
    {
        var before = long.MaxValue;
        if (query.Cursor is { } cursor)
        {
            if (Cursor.Read(cursor, query) is not { } read) return new LedgerPage([], null, LedgerUseMessages.CursorOfAnother(cursor));
            before = read;
        }
        var (first, last) = await ReachAsync(connection, query);
        var walk = new Walk(await RarestFirstAsync(connection, QueryWords.Of(query)), first, Math.Min(before, last), query);
        var limit = Math.Clamp(query.Limit, 1, 1000);
        var found = await walk.FindAsync(connection, limit + 1, MostLookedAt);
        var next = found.Count > limit
            ? found[limit - 1]
            : await walk.EndAsync(connection, MostLookedAt);
        var records = new List<LedgerRecord>(limit);
        foreach (var position in found.Take(limit)) records.Add(await RecordRows.AtAsync(connection, position));
        return new LedgerPage([.. records], next is { } end ? Cursor.Write(end, query) : null);
    }

    // Clocks of several services differ a little, so the hours say only where to look; the time of each record decides.
    private static async Task<(long First, long Before)> ReachAsync(DbConnection connection, LedgerQuery query)
    {
        if (query is { From: null, To: null }) return (0, long.MaxValue);
        var rows = await connection.ListAsync(
            r => r.IsDBNull(0) ? (0L, 0L) : (r.GetInt64(0), r.GetInt64(1) + 1),
            "SELECT min(first), max(last) FROM hour WHERE hour >= @from AND hour <= @to",
            ("@from", query.From is { } from ? TermIndexing.HourOf(from) : long.MinValue),
            ("@to", query.To is { } to ? TermIndexing.HourOf(to) : long.MaxValue));
        return rows.Single();
    }

    private static async Task<IReadOnlyList<long>> RarestFirstAsync(DbConnection connection, IReadOnlyList<long> words)
    {
        if (words.Count == 1) return words;
        var counts = new List<(long Word, long Count)>();
        foreach (var word in words)
            counts.Add((word, await connection.ScalarAsync<long>(
                "SELECT count(*) FROM (SELECT 1 FROM occurrence WHERE word = @word LIMIT @most) few",
                ("@word", word), ("@most", MostCounted))));
        return [.. counts.OrderBy(c => c.Count).Select(c => c.Word)];
    }
}
