using System.Data.Common;
using FindingRules.Ledger.Feedback;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Searching;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Indexing;

/// <summary>
/// The records that the index has not taken in, looked through one by one: so that a question is answered whole by who may not write the
/// index, or cannot for want of room.
/// </summary>
internal static class Unindexed
{
    private const int PageRecords = 200;

    /// <summary>How many records there are, and how many of them are indexed.</summary>
    public static async Task<(long Size, long Indexed)> ReachAsync(DbConnection connection) => (await connection.ListAsync(
        r => (r.GetInt64(0), r.GetInt64(1)), "SELECT t.size, w.indexed FROM tree t, watermark w")).Single();

    /// <summary>The same; the index of an older form is none.</summary>
    public static async Task<(long Size, long Indexed)> ReachAsync(ILedgerDatabase database, DbConnection connection)
    {
        var (size, indexed) = await ReachAsync(connection);
        return (size, database.IsOfPresentForm ? indexed : 0);
    }

    /// <summary>Adds those that the query finds, the newest first, until there are so many.</summary>
    /// <returns>The position that the last one looked at has.</returns>
    public static async Task<long> FindAsync(
        DbConnection connection, LedgerQuery query, long first, long before, int limit, List<LedgerRecord> found)
    {
        var words = QueryWords.Of(query);
        while (first < before && found.Count < limit)
        {
            var from = Math.Max(first, before - PageRecords);
            foreach (var record in (await RecordRows.ListAsync(connection, from, before, PageRecords)).AsEnumerable().Reverse())
            {
                before = record.Index;
                if (Fits(record, query, words)) found.Add(record);
                if (found.Count == limit) return before;
            }
            before = from;
        }
        return before;
    }

    /// <summary>What the rest of the records would add to the counts.</summary>
    public static async Task<IndexRows> CountAsync(DbConnection connection, CancellationToken cancellation)
    {
        var rows = new IndexRows();
        for (var (size, next) = await ReachAsync(connection); next < size; next += PageRecords)
        {
            cancellation.ThrowIfCancellationRequested();
            foreach (var record in await IndexedRecord.ListAsync(connection, next, PageRecords))
            {
                TermIndexing.Add(record, rows);
                if (record.Header.Kind == RecordKind.Feedback) await FeedbackIndexing.AddAsync(connection, record, rows);
            }
            rows.Words.Clear();
        }
        return rows;
    }

    private static bool Fits(LedgerRecord record, LedgerQuery query, IReadOnlyList<long> words)
    {
        if (!TimeFilter.Takes(query, record.Time)) return false;
        var header = HeaderReader.Read(record.Header);
        var has = TermIndexing.LastingWords(header).Concat(record.Body is { } body ? TermIndexing.ErasableWords(header, body.Terms) : []);
        return !words.Except(has).Any();
    }
}
