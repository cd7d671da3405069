using System.Data.Common;
using FindingRules.Ledger.Appending;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Feedback;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Indexing;

/// <summary>
/// Brings the index after the records, in steps that are written between two batches of appends: when nothing is being appended, when a
/// question needs it, or when it has fallen too far behind. What another process appended is taken in like one's own.
/// </summary>
internal sealed class Indexer : IAsyncDisposable
{
    private const long MostBehind = 1_000_000;
    private static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(50);

    private readonly ILedgerDatabase _database;
    private readonly WriteQueue _queue;
    private readonly TimeSpan _wait;
    private readonly TimeProvider _time;
    private readonly CancellationTokenSource _stop = new();
    private readonly Task _following;

    public Indexer(ILedgerDatabase database, WriteQueue queue, LedgerOptions options)
    {
        (_database, _queue, _wait, _time) = (database, queue, options.IndexWait, options.Time);
        _following = Task.Run(FollowAsync);
    }

    /// <summary>Returns when all that is durable now is indexed.</summary>
    public async Task CatchUpAsync(CancellationToken cancellation)
    {
        var began = _time.GetTimestamp();
        var (size, indexed) = await ReadAsync();
        while (indexed < size)
        {
            if (_time.GetElapsedTime(began) > _wait) throw Fail.Behind(_database.Name, size - indexed);
            indexed = await StepAsync(cancellation);
        }
    }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        await _following;
        _stop.Dispose();
    }

    private async Task FollowAsync()
    {
        while (!_stop.IsCancellationRequested)
        {
            try
            {
                await Task.Delay(Quiet, _stop.Token);
                var (size, indexed) = await ReadAsync();
                while (indexed < size && (_queue.IsQuietFor(Quiet) || size - indexed > MostBehind) && !_stop.IsCancellationRequested)
                    indexed = await StepAsync(_stop.Token);
            }
            catch (OperationCanceledException)
            {
                return;
            }
#pragma warning disable CA1031 // A store that fails is reported to those who append and ask; following goes on when it is back.
            catch (Exception)
#pragma warning restore CA1031
            {
                await Task.Delay(TimeSpan.FromSeconds(1), CancellationToken.None);
            }
        }
    }

    private Task<(long Size, long Indexed)> ReadAsync() => _database.ReadAsync(Unindexed.ReachAsync);

    /// <returns>How many records are indexed now.</returns>
    private async Task<long> StepAsync(CancellationToken cancellation)
    {
        var (rows, feedback) = await _database.ReadAsync(DrawAsync, cancellation);
        return await _queue.RunAsync(() => _database.WriteAsync(WriteKind.Index, c => WriteAsync(c, rows, feedback)), cancellation);
    }

    // Most of the work is done while others append.
    private static async Task<(IndexRows Rows, List<IndexedRecord> Feedback)> DrawAsync(DbConnection connection)
    {
        var (size, from) = await Unindexed.ReachAsync(connection);
        var end = Math.Min(size, Places.FirstOf(Places.ChunkOf(from) + 1));
        var records = await IndexedRecord.ListAsync(connection, from, (int)(end - from));
        var rows = new IndexRows { From = from, Indexed = from + records.Count };
        foreach (var record in records) TermIndexing.Add(record, rows);
        return (rows, [.. records.Where(r => r.Header.Kind == RecordKind.Feedback)]);
    }

    private async Task<long> WriteAsync(DbConnection connection, IndexRows rows, List<IndexedRecord> feedback)
    {
        // Another process may have been quicker.
        var indexed = await _database.LockIndexAsync(connection);
        if (indexed != rows.From || rows.Indexed == rows.From) return indexed;
        foreach (var record in feedback) await FeedbackIndexing.AddAsync(connection, record, rows);
        await Postings.AddAsync(_database, connection, rows);
        await _database.InsertAsync(connection, rows);
        return rows.Indexed;
    }
}
