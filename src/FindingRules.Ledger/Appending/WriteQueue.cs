using System.Threading.Channels;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Appending;

/// <summary>
/// Group commit: one task takes what waits and writes it in one transaction, and what arrives meanwhile makes up the next. Each caller
/// is answered when the transaction of its record is durable.
/// </summary>
internal sealed class WriteQueue : IAsyncDisposable
{
    private readonly ILedgerDatabase _database;
    private readonly int _mostRecords;
    private readonly TimeProvider _time;
    private readonly Channel<Waiting> _waiting;
    private readonly Task _writing;
    private readonly TimeSpan _wait;
    private long _lastAppend;
    private int _appends;

    public WriteQueue(ILedgerDatabase database, LedgerOptions options)
    {
        _database = database;
        _mostRecords = Math.Max(1, options.BatchRecords);
        _time = options.Time;
        _wait = options.LockWait;
        _waiting = Channel.CreateBounded<Waiting>(new BoundedChannelOptions(Math.Max(1, options.WaitingAppends)) { SingleReader = true });
        _writing = Task.Run(WriteAllAsync);
    }

    /// <summary>Whether no append waits, and none did for a while.</summary>
    public bool IsQuietFor(TimeSpan span) =>
        Volatile.Read(ref _appends) == 0 && _time.GetElapsedTime(Volatile.Read(ref _lastAppend)) > span;

    public async Task<Placed> AppendAsync(NewRecord record, CancellationToken cancellation)
    {
        Interlocked.Increment(ref _appends);
        try
        {
            return await EnqueueAsync(new WaitingAppend(record, _time.GetTimestamp()), cancellation);
        }
        finally
        {
            Volatile.Write(ref _lastAppend, _time.GetTimestamp());
            Interlocked.Decrement(ref _appends);
        }
    }

    /// <summary>Runs a piece of work between two batches.</summary>
    public async Task<T> RunAsync<T>(Func<Task<T>> work, CancellationToken cancellation) =>
        (T)(await EnqueueAsync(new WaitingWork(async () => (await work())!), cancellation))!;

    public async ValueTask DisposeAsync()
    {
        _waiting.Writer.TryComplete();
        await _writing;
    }

    private async Task<T> EnqueueAsync<T>(Waiting<T> item, CancellationToken cancellation)
    {
        try
        {
            // Once it is in the queue it will be written, whoever still waits for it.
            using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
            if (!_waiting.Writer.TryWrite(item))
            {
                patience.CancelAfter(_wait);
                await _waiting.Writer.WriteAsync(item, patience.Token);
            }
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            throw Fail.Locked(_database.Name, _wait);
        }
        catch (ChannelClosedException)
        {
            throw Fail.Closing(_database.Name);
        }
        return await item.Done.Task;
    }

    private async Task WriteAllAsync()
    {
        var batch = new List<WaitingAppend>(_mostRecords);
        while (await _waiting.Reader.WaitToReadAsync())
        {
            while (batch.Count < _mostRecords && _waiting.Reader.TryPeek(out var next) && next is WaitingAppend append
                && _waiting.Reader.TryRead(out _))
                batch.Add(append);
            if (batch.Count > 0) await WriteAsync(batch);
            else if (_waiting.Reader.TryRead(out var item)) await ((WaitingWork)item).RunAsync();
            batch.Clear();
        }
    }

    private async Task WriteAsync(List<WaitingAppend> batch)
    {
        try
        {
            var placed = await AppendTransaction.RunAsync(_database, [.. batch.Select(b => b.Record)]);
            for (var i = 0; i < batch.Count; i++) batch[i].Done.SetResult(placed[i]);
        }
#pragma warning disable CA1031 // Whatever went wrong, those who wait must hear of it, and the next batch is written.
        catch (Exception e)
#pragma warning restore CA1031
        {
            foreach (var waiting in batch) waiting.Done.SetException(e);
            if (e is LedgerException { Failure: LedgerFailure.Locked or LedgerFailure.Unreachable }) RefuseOthers(e);
        }
    }

    // They have waited as long as the batch did; each next batch would let them wait as long again.
    private void RefuseOthers(Exception why)
    {
        while (_waiting.Reader.TryPeek(out var next) && next is WaitingAppend append && _time.GetElapsedTime(append.Since) >= _wait
            && _waiting.Reader.TryRead(out _))
            append.Done.SetException(why);
    }

    private abstract class Waiting;

    private abstract class Waiting<T> : Waiting
    {
        public TaskCompletionSource<T> Done { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);
    }

    private sealed class WaitingAppend(NewRecord record, long since) : Waiting<Placed>
    {
        public long Since => since;

        public NewRecord Record => record;
    }

    private sealed class WaitingWork(Func<Task<object>> work) : Waiting<object>
    {
        public async Task RunAsync()
        {
            try
            {
                Done.SetResult(await work());
            }
#pragma warning disable CA1031 // As above.
            catch (Exception e)
#pragma warning restore CA1031
            {
                Done.SetException(e);
            }
        }
    }
}
