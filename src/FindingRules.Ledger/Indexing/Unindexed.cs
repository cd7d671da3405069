using System.Data.Common;
using System.Runtime.CompilerServices;
using FindingRules.Ledger.Feedback;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Searching;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Indexing;

/// <summary>The records that the index has not taken in: looked through by who cannot wait for it, or may not write it.</summary>
internal static class Unindexed
{
    private const int PageRecords = 200;

    /// <summary>How many records there are, and how many of them are indexed.</summary>
    public static async Task<(long Size, long Indexed)> ReachAsync(DbConnection connection) => (await connection.ListAsync(
        r => (r.GetInt64(0), r.GetInt64(1)), "SELECT t.size, w.indexed FROM tree t, watermark w")).Single();

    /// <summary>Those from <paramref name="first"/> on that the query finds, the newest first.</summary>
    public static async IAsyncEnumerable<LedgerRecord> FindAsync(
        ILedgerDatabase database, LedgerQuery query, long first, long before, [EnumeratorCancellation] CancellationToken cancellation)
    {
        var words = QueryWords.Of(query);
        while (first < before)
        {
            var (from, end) = (Math.Max(first, before - PageRecords), before);
            var page = await database.ReadAsync(c => RecordRows.ListAsync(c, from, end, PageRecords), cancellation);
            foreach (var record in page.AsEnumerable().Reverse().Where(r => Fits(r, query, words))) yield return record;
            before = from;
        }
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
        if (record.Time < query.From || record.Time >= query.To) return false;
        var header = HeaderReader.Read(record.Header);
        var has = TermIndexing.LastingWords(header).Concat(record.Body is { } body ? TermIndexing.ErasableWords(header, body.Terms) : []);
        return !words.Except(has).Any();
    }
}
