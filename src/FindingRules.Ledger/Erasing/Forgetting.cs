using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Erasing;

/// <summary>
/// Sees to it that erased bytes leave the files: at once where it can be, otherwise again and again until whoever reads them has let go.
/// </summary>
internal sealed class Forgetting(ILedgerDatabase database) : IAsyncDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);
    private readonly CancellationTokenSource _stop = new();
    private readonly Lock _gate = new();
    private Task _trying = Task.CompletedTask;

    /// <returns>Whether they are gone; otherwise it is tried until they are, or until the ledger is closed.</returns>
    public async Task<bool> BeginAsync()
    {
        if (await TryAsync()) return true;
        lock (_gate)
            if (_trying.IsCompleted && !_stop.IsCancellationRequested) _trying = Task.Run(GoOnAsync);
        return false;
    }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        await _trying;
        _stop.Dispose();
    }

    private async Task GoOnAsync()
    {
        try
        {
            do await Task.Delay(Pause, _stop.Token);
            while (!await TryAsync());
        }
        catch (OperationCanceledException)
        {
            // Who closes the file last takes the log into it.
        }
    }

    private async Task<bool> TryAsync()
    {
        try
        {
            return await database.ForgetErasedAsync();
        }
        catch (LedgerException)
        {
            return false;
        }
    }
}
