using System.Collections.Immutable;
using System.Data.Common;
using FindingRules.Ledger.Appending;
using FindingRules.Ledger.Canonical;
using FindingRules.Ledger.Erasing;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Feedback;
using FindingRules.Ledger.Indexing;
using FindingRules.Ledger.Merkle;
using FindingRules.Ledger.Packs;
using FindingRules.Ledger.Proofs;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Searching;
using FindingRules.Ledger.Signing;
using FindingRules.Ledger.Statistics;
using FindingRules.Ledger.Storage;
using FindingRules.Ledger.Withdrawing;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Ledger;

/// <summary>
/// The append-only store of what was answered. A record is durable when the task that appends it ends; records are the leaves of a
/// Merkle tree whose signed heads vouch for all of them. Any number of threads may use it; what fails outside the request throws a
/// <see cref="LedgerException"/>.
/// </summary>
public sealed class RecordLedger : IAsyncDisposable
{
    private readonly ILedgerDatabase _database;
    private readonly LedgerOptions _options;
    private readonly SigningKey _key;
    private readonly WriteQueue _queue;
    private readonly Indexer _indexer;
    private readonly PackShelf _packs;
    private readonly Forgetting _forgetting;

    private RecordLedger(ILedgerDatabase database, LedgerOptions options, Guid id, SigningKey key)
    {
        (_database, _options, Id, _key) = (database, options, id, key);
        _queue = new WriteQueue(database, options);
        _indexer = new Indexer(database, _queue, options);
        _packs = new PackShelf(database, options.Time);
        _forgetting = new Forgetting(database);
    }

    /// <summary>Drawn when the ledger was begun; tree heads name it.</summary>
    public Guid Id { get; }

    public PublicKey PublicKey => _key.Public;

    /// <summary>
    /// It was begun just now, and its key was there before: another process begins it too, or a ledger that was there is gone.
    /// </summary>
    public bool HasBegunWithOlderKey { get; private init; }

    /// <summary>Opens the ledger, begins it where there is none (unless told otherwise), and brings an older one to the present
    /// form.</summary>
    public static async Task<RecordLedger> OpenAsync(LedgerLocation at, LedgerOptions? options = null)
    {
        options ??= new LedgerOptions();
        var database = await LedgerDatabases.OpenAsync(at, options);
        try
        {
            var (id, key, isKeyOlder) = await LedgerIdentity.EstablishAsync(database, at, options);
            return new RecordLedger(database, options, id, key) { HasBegunWithOlderKey = isKeyOlder };
        }
        catch
        {
            await database.DisposeAsync();
            throw;
        }
    }

    /// <summary>Records a reading. The canonical form and the hashes are made on the caller's thread.</summary>
    public async Task<AppendResult> AppendAsync(ReadingEntry entry, RetryKey? retry = null, CancellationToken cancellation = default)
    {
        if (!await _packs.HasAsync(entry.Pack.TextDigest)) throw Fail.PackMissing(entry.Pack.Name, entry.Pack.TextDigest);
        var study = CanonicalJson.Write(entry.Study.Span, NumberForm.Exact);
        var head = new RecordHead(
            entry.IsShadow ? RecordKind.Shadow : RecordKind.Reading, entry.Actor, entry.Pack, entry.Engine, entry.Correlation);
        return await AppendAsync(head, study, entry.Reading.ToArray(), entry.Terms, retry, cancellation);
    }

    /// <summary>Records what became of suggestions of a reading.</summary>
    public async Task<AppendResult> AppendAsync(FeedbackEntry entry, RetryKey? retry = null, CancellationToken cancellation = default)
    {
        var reading = await FindAsync(entry.Reading, cancellation);
        var wrong = FeedbackCheck.Of(entry, reading);
        if (!wrong.IsEmpty) return new AppendResult.Refused(wrong);
        var head = new RecordHead(
            RecordKind.Feedback, entry.Actor, reading!.Pack, reading.Engine, entry.Correlation, entry.Reading);
        return await AppendAsync(head, FeedbackJson.Write(entry.Suggestions), [], IndexTerms.None, retry, cancellation);
    }

    /// <summary>Records that a rule must no longer be rested on, once for a pack and revision, whoever says it how often;
    /// <see cref="WithdrawalEntry.Affected"/> finds the readings that did.</summary>
    public Task<AppendResult> AppendAsync(WithdrawalEntry entry, CancellationToken cancellation = default) => AppendAsync(
        new RecordHead(RecordKind.Withdrawal, entry.Actor), entry.ToContent(), [], entry.ToTerms(), entry.Once, cancellation);

    /// <summary>A record by its id; null where there is none.</summary>
    public Task<LedgerRecord?> FindAsync(Guid id, CancellationToken cancellation = default) =>
        _database.ReadAsync(c => RecordRows.FindAsync(c, id), cancellation);

    /// <summary>What an append with this key would come to, without appending; null where the key was not used.</summary>
    public Task<AppendResult?> FindAsync(RetryKey retry, CancellationToken cancellation = default) =>
        _database.ReadAsync(async connection =>
    {
        var mark = retry.ToMark();
        foreach (var (request, position) in await RetryRows.FindAsync(connection, mark.Key))
        {
            var first = await RecordRows.AtAsync(connection, position);
            return request.AsSpan().SequenceEqual(mark.Request) ? new AppendResult.Repeated(first) : new AppendResult.KeyTaken(first.Id);
        }
        return (AppendResult?)null;
    }, cancellation);

    /// <summary>Readings that say that they replace this one, the earliest first.</summary>
    public async Task<ImmutableArray<Guid>> FindSupersedingAsync(LedgerRecord reading, CancellationToken cancellation = default)
    {
        if (reading.Body?.Terms.Study is not { } study) return [];
        return [.. await _database.ReadAsync(c => Superseding.FindAsync(_database, c, reading.Kind, study, reading.Index), cancellation)];
    }

    /// <summary>Keeps the texts of a pack; false where they were kept already.</summary>
    /// <exception cref="ArgumentException">The files do not have the pack's text digest.</exception>
    public Task<bool> StorePackAsync(PackTexts texts, CancellationToken cancellation = default)
    {
        if (texts.ComputeDigest() != texts.Pack.TextDigest)
            throw new ArgumentException($"The files of {texts.Pack.Name} do not have the digest {texts.Pack.TextDigest}.", nameof(texts));
        return _queue.RunAsync(() => _packs.StoreAsync(texts), cancellation);
    }

    public Task<PackTexts?> FindPackAsync(string textDigest) => _packs.FindAsync(textDigest);

    /// <summary>All packs that were ever stored, the earliest first.</summary>
    public async Task<ImmutableArray<StoredPack>> ListPacksAsync() => [.. await _packs.ListAsync()];

    /// <summary>Finds records. What was durable before the question is in the answer.</summary>
    public async Task<LedgerPage> SearchAsync(LedgerQuery query, CancellationToken cancellation = default)
    {
        await CatchUpAsync(query.NeedsIndex, cancellation);
        return await _database.ReadAsync(c => Search.RunAsync(_database, c, query), cancellation);
    }

    public async Task<RuleStatistics> GetStatisticsAsync(string rule, CancellationToken cancellation = default)
    {
        await CatchUpAsync(isNeeded: false, cancellation);
        return await _database.ReadAtOnceAsync(
            async c => await StatisticsReader.ReadAsync(c, rule, await Unindexed.CountAsync(c, cancellation)), cancellation);
    }

    /// <summary>Signs the tree as it is now, or as it was when it had fewer records.</summary>
    /// <returns>Null where there are not so many records.</returns>
    public Task<SignedTreeHead?> GetTreeHeadAsync(long? size = null, CancellationToken cancellation = default) =>
        _database.ReadAsync(async connection =>
    {
        var all = await RecordRows.SizeAsync(connection);
        return size is < 0 || size > all ? null : await SignAsync(connection, size ?? all);
    }, cancellation);

    /// <summary>Shows that a record is in the tree, as it is now or as it was.</summary>
    public Task<ProofAnswer<InclusionProof>> ProveInclusionAsync(
        LedgerRecord record, long? size = null, CancellationToken cancellation = default) =>
        ProveAsync(size, record.Index + 1, async (connection, head) => new InclusionProof(
            record.Id, record.Index, record.Header,
            await TreeReader.ReadAsync(
                connection, ProofPath.Inclusion((ulong)record.Index, (ulong)head.Size), _database.Name), head)
        {
            Body = record.Body,
        }, cancellation);

    /// <summary>Shows that an earlier tree is the beginning of the present one, or of a later one.</summary>
    public Task<ProofAnswer<ConsistencyProof>> ProveConsistencyAsync(
        long from, long? to = null, CancellationToken cancellation = default) =>
        ProveAsync(to, from, async (connection, head) => new ConsistencyProof(
            from, await TreeReader.ReadAsync(
                connection, ProofPath.Consistency((ulong)from, (ulong)head.Size), _database.Name), head), cancellation);

    /// <summary>All records that are there now, in order, a few at a time.</summary>
    public IAsyncEnumerable<LedgerRecord> ExportAsync(long from = 0, CancellationToken cancellation = default) =>
        RecordRows.ExportAsync(_database, from, cancellation);

    /// <summary>Erases bodies and records that it did. Proofs keep holding, for the leaves stay.</summary>
    public async Task<ErasureResult> EraseAsync(ErasureRequest request, CancellationToken cancellation = default)
    {
        if (!ErasureRequest.IsCode(request.Actor) || !ErasureRequest.IsCode(request.Reason))
            throw new ArgumentException("Actor and reason are codes.", nameof(request));
        var eraser = new Eraser(_database, _options.Time);
        var steps = new List<ErasedStep>();
        foreach (var some in request.Records.IsDefaultOrEmpty ? [] : request.Records.Chunk(500))
            await StepAsync(() => eraser.EraseAsync(request, some));
        while (request.Before is { } before && await StepAsync(() => eraser.EraseBeforeAsync(request, before)))
        {
        }
        return new ErasureResult(steps.Sum(s => (long)s.Count), [.. steps.Select(s => s.Record)])
        {
            Unreadable = eraser.Unreadable,
            AreBytesGone = steps.Count == 0 || await _forgetting.BeginAsync(),
        };

        async Task<bool> StepAsync(Func<Task<ErasedStep?>> erase)
        {
            // Words can be taken out of the index only when they are in it.
            await _indexer.CatchUpAsync(cancellation);
            if (await _queue.RunAsync(erase, cancellation) is not { } step) return false;
            steps.Add(step);
            return true;
        }
    }

    // What the index cannot take in, for want of room or of time, is looked through record by record.
    private async Task CatchUpAsync(bool isNeeded, CancellationToken cancellation)
    {
        try
        {
            await _indexer.CatchUpAsync(cancellation);
        }
        catch (LedgerException e) when (
            !isNeeded && e.Failure is LedgerFailure.Full or LedgerFailure.ReadOnly or LedgerFailure.Locked or LedgerFailure.Behind)
        {
            // The answer comes, more slowly.
        }
    }

    private Task<ProofAnswer<T>> ProveAsync<T>(
        long? size, long atLeast, Func<DbConnection, SignedTreeHead, Task<T>> prove, CancellationToken cancellation)
        where T : class => _database.ReadAsync(async connection =>
    {
        ArgumentOutOfRangeException.ThrowIfNegative(atLeast);
        var all = await RecordRows.SizeAsync(connection);
        if (Math.Max(size ?? 0, atLeast) > all) return new ProofAnswer<T>(
            null, LedgerUseMessages.SizeBeyondTree(Math.Max(size ?? 0, atLeast), all));
        if (size < atLeast) return new ProofAnswer<T>(null, LedgerUseMessages.SizeTooSmall(size.Value, atLeast));
        return new ProofAnswer<T>(await prove(connection, await SignAsync(connection, size ?? all)), null);
    }, cancellation);

    private async Task<SignedTreeHead> SignAsync(DbConnection connection, long size) => SignedTreeHead.Sign(
        Id, size, await TreeReader.RootAsync(connection, size, _database.Name), _options.Time.GetUtcNow(), _key);

    /// <summary>Writes what waits, and closes the store.</summary>
    public async ValueTask DisposeAsync()
    {
        await _forgetting.DisposeAsync();
        await _indexer.DisposeAsync();
        await _queue.DisposeAsync();
        await _database.DisposeAsync();
        _key.Dispose();
    }

    private async Task<AppendResult> AppendAsync(
        RecordHead head, byte[] content, byte[] answer, IndexTerms terms, RetryKey? retry, CancellationToken cancellation)
    {
        var record = NewRecord.Of(head, content, answer, terms, _options.Time.GetUtcNow(), retry?.ToMark());
        var placed = await _queue.AppendAsync(record, cancellation);
        if (placed.As == PlacedAs.New) return new AppendResult.Appended(record.Header.Id, placed.Position, record.Header.Time);
        var first = await _database.ReadAsync(c => RecordRows.AtAsync(c, placed.Position), cancellation);
        return placed.As == PlacedAs.Repeated ? new AppendResult.Repeated(first) : new AppendResult.KeyTaken(first.Id);
    }
}
