using FindingRules.Ledger;
using FindingRules.Service.Hosting;

namespace FindingRules.Service.Records;

/// <summary>Opens the ledger before anything is answered, and closes it when nothing can come any more.</summary>
internal sealed class LedgerKeeper(
    ServiceSettings settings, TimeProvider time, ILogger<LedgerKeeper> log) : IHostedService, IAsyncDisposable
{
    private RecordLedger? _ledger;

    /// <summary>Null where no records are kept.</summary>
    public RecordLedger? Ledger => _ledger;

    /// <summary>Null where no records are kept.</summary>
    public PackLibrary? Packs { get; private set; }

    public async Task StartAsync(CancellationToken cancellationToken)
    {
        if (settings.Ledger.Location is not { } location) return;
        _ledger = await RecordLedger.OpenAsync(location, new LedgerOptions { KeyFile = settings.Ledger.KeyFile, Time = time });
        Packs = new PackLibrary(_ledger.FindPackAsync);
        ServiceLog.LedgerOpened(log, location.Name, _ledger.Id);
        if (_ledger.HasBegunWithOlderKey) ServiceLog.KeyOlderThanLedger(log, location.Name);
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    // Requests in flight may still append while the host stops; what they were promised is written out here.
    public async ValueTask DisposeAsync()
    {
        if (Interlocked.Exchange(ref _ledger, null) is { } ledger) await ledger.DisposeAsync();
    }
}
