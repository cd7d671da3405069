using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using FindingRules.Ledger.Erasing;
using FindingRules.Ledger.Indexing;
using FindingRules.Ledger.Packs;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Searching;
using FindingRules.Ledger.Statistics;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger;

/// <summary>
/// A ledger to look into only: no key is needed, nothing is written, and a copy that lies where nobody may write will do. Records that the
/// index has not taken in yet are looked through one by one, so that no answer misses them.
/// </summary>
public sealed class LedgerReader : IAsyncDisposable
{
    private readonly ILedgerDatabase _database;
    private readonly PackShelf _packs;

    private LedgerReader(ILedgerDatabase database) => (_database, _packs) = (database, new PackShelf(database, TimeProvider.System));

    /// <exception cref="Failures.LedgerException">There is no ledger, or it cannot be read.</exception>
    public static async Task<LedgerReader> OpenAsync(LedgerLocation at) => new(await LedgerDatabases.OpenToReadAsync(at));

    /// <summary>A record by its id; null where there is none.</summary>
    public Task<LedgerRecord?> FindAsync(Guid id, CancellationToken cancellation = default) =>
        _database.ReadAsync(c => RecordRows.FindAsync(c, id), cancellation);

    public Task<PackTexts?> FindPackAsync(string textDigest) => _packs.FindAsync(textDigest);

    /// <summary>All packs that were ever stored, the earliest first.</summary>
    public async Task<ImmutableArray<StoredPack>> ListPacksAsync() => [.. await _packs.ListAsync()];

    /// <summary>How many records there are.</summary>
    public Task<long> CountAsync(CancellationToken cancellation = default) => _database.ReadAsync(RecordRows.SizeAsync, cancellation);

    /// <summary>How many readings have lost their bodies, so that nobody can tell any more what they rested on.</summary>
    public Task<long> CountErasedReadingsAsync(CancellationToken cancellation = default) => _database.ReadAsync(
        c => c.ScalarAsync<long>(
            "SELECT count(*) FROM record r WHERE r.kind = @kind AND NOT EXISTS (SELECT 1 FROM body b WHERE b.position = r.position)",
            ("@kind", (int)RecordKind.Reading)), cancellation);

    /// <summary>How many bodies an erasure of what is older than a moment would take.</summary>
    public Task<long> CountErasableAsync(DateTimeOffset before, CancellationToken cancellation = default) => _database.ReadAsync(
        c => c.ScalarAsync<long>(
            "SELECT count(*) FROM body b JOIN record r ON r.position = b.position WHERE r.time < @before AND r.kind IN (1, 2, 3)",
            ("@before", before.ToUnixTimeMilliseconds())), cancellation);

    /// <summary>How many bodies an erasure of these records would take, with what goes with them.</summary>
    /// <remarks>Feedback on a reading is counted once it is indexed.</remarks>
    public Task<long> CountErasableAsync(IEnumerable<Guid> records, CancellationToken cancellation = default) =>
        _database.ReadAsync(c => new Eraser(_database, TimeProvider.System).CountAsync(c, records), cancellation);

    /// <summary>All records that are there now, in order, a few at a time.</summary>
    public IAsyncEnumerable<LedgerRecord> ExportAsync(long from = 0, CancellationToken cancellation = default) =>
        RecordRows.ExportAsync(_database, from, cancellation);

    /// <summary>Every record that is found by the query, the newest first; its limit and cursor do not count.</summary>
    /// <remarks>Feedback on a reading finds the reading only once the feedback is indexed.</remarks>
    public async IAsyncEnumerable<LedgerRecord> FindAllAsync(
        LedgerQuery query, [EnumeratorCancellation] CancellationToken cancellation = default)
    {
        const int pageRecords = 200;
        query = query with { Limit = pageRecords, Cursor = null };
        do
        {
            var asked = query;
            var page = await _database.ReadAsync(c => Search.RunAsync(_database, c, asked), cancellation);
            foreach (var record in page.Records) yield return record;
            query = query with { Cursor = page.Next };
        }
        while (query.Cursor is not null);
    }

    public Task<RuleStatistics> GetStatisticsAsync(string rule, CancellationToken cancellation = default) =>
        _database.ReadAtOnceAsync(
            async c => await StatisticsReader.ReadAsync(c, rule, await Unindexed.CountAsync(c, cancellation)), cancellation);

    public ValueTask DisposeAsync() => _database.DisposeAsync();
}
