using FindingRules.Ledger.Correlation;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Records;
using FindingRules.Model.Text;
using FindingRules.Service.Hosting;
using FindingRules.Service.Packs;

namespace FindingRules.Service.Records;

/// <summary>Puts readings into the ledger. A task that ended without a fault means that the record is durable.</summary>
internal sealed class ReadingRecorder(LedgerKeeper keeper, PackRecords packs, LedgerProbe probe, ServiceSettings settings)
{
    public bool IsKeeping => keeper.Ledger is not null;

    /// <summary>What came of an earlier request with this key; null where there was none.</summary>
    public Task<AppendResult?> FindAsync(RetryKey key) => keeper.Ledger!.FindAsync(key);

    public async Task<AppendResult> AddAsync(
        TakenPack pack, DecidedStudy decided, ReadOnlyMemory<byte> answer, SourceText study, RetryKey? key, TraceContext? correlation)
    {
        var ledger = keeper.Ledger!;
        try
        {
            await packs.KeepAsync(ledger, pack);
            // Whoever sent the study may have gone; whether it was recorded must not depend on the moment at which.
            return await ledger.AppendAsync(
                RecordedReading.Of(decided, answer, study, settings.Ledger.Actor, correlation), key, CancellationToken.None);
        }
        catch (LedgerException e)
        {
            probe.Failed(e);
            throw;
        }
    }
}
