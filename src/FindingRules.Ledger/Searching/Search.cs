using System.Data.Common;
using FindingRules.Ledger.Indexing;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Storage;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Ledger.Searching;

/// <summary>
/// Walks from the newest record to the oldest: first those that are not indexed yet, one by one; then the index. Only so much is looked at
/// for one page.
/// </summary>
internal static class Search
{
    private const int MostUnindexed = 10_000;
    private const int MostRows = 2_000;

    public static async Task<LedgerPage> RunAsync(ILedgerDatabase database, DbConnection connection, LedgerQuery query)
    {
        var before = long.MaxValue;
        if (query.Cursor is { } cursor)
        {
            if (Cursor.Read(cursor, query) is not { } read) return new LedgerPage([], null, LedgerUseMessages.CursorOfAnother(cursor));
            before = read;
        }
        var limit = Math.Clamp(query.Limit, 1, 1000);
        var (size, indexed) = await Unindexed.ReachAsync(database, connection);
        before = Math.Min(before, size);
        var found = new List<LedgerRecord>();
        if (before > indexed)
        {
            before = await Unindexed.FindAsync(connection, query, Math.Max(indexed, before - MostUnindexed), before, limit, found);
            if (found.Count == limit || before > indexed) return Page(found, before, query);
        }
        var end = before == 0 || !database.IsOfPresentForm ? null : await FindAsync(connection, query, before, limit, found);
        return Page(found, end, query);
    }

    private static LedgerPage Page(List<LedgerRecord> found, long? before, LedgerQuery query) =>
        new([.. found], before is > 0 ? Cursor.Write(before.Value, query) : null);

    /// <returns>Where to go on; null at the end.</returns>
    private static async Task<long?> FindAsync(
        DbConnection connection, LedgerQuery query, long before, int limit, List<LedgerRecord> found)
    {
        var (first, end) = await TimeFilter.ReachAsync(connection, query);
        if (await PostingReader.RarestFirstAsync(connection, QueryWords.Of(query)) is not { } words) return null;
        before = Math.Min(before, end);
        var looked = 0;
        await foreach (var (chunk, places) in PostingReader.ReadAsync(connection, words, first, before))
        {
            var start = Places.FirstOf(chunk);
            var positions = places.Descending((int)Math.Min(Places.Span, before - start)).Select(p => start + p).Where(p => p >= first);
            foreach (var some in positions.Chunk(2 * limit))
                foreach (var position in await TimeFilter.KeepAsync(connection, query, some))
                {
                    // Whether there is one more is known only now.
                    if (found.Count == limit) return position + 1;
                    found.Add(await RecordRows.AtAsync(connection, position));
                }
            if (++looked == MostRows) return start;
        }
        return null;
    }
}
