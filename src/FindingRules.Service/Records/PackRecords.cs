using System.Collections.Concurrent;
using FindingRules.Ledger;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Withdrawing;
using FindingRules.Service.Hosting;
using FindingRules.Service.Packs;

namespace FindingRules.Service.Records;

/// <summary>
/// Keeps in the ledger what readings rest on: the texts of the packs in force, and that a pack withdrew a rule, once for each rule. What
/// fails is tried again at the next look, and before a reading that needs it.
/// </summary>
internal sealed class PackRecords(LedgerKeeper keeper, PackShelf shelf, ILogger<PackRecords> log)
{
    private readonly ConcurrentDictionary<string, bool> _kept = new(StringComparer.Ordinal);
    private readonly HashSet<string> _seen = new(StringComparer.Ordinal);

    /// <summary>Of all packs in force; used by one thread at a time.</summary>
    public async Task KeepAsync()
    {
        if (keeper.Ledger is not { } ledger) return;
        try
        {
            foreach (var pack in shelf.State.InForce)
            {
                if (_seen.Contains(pack.Pack.TextDigest)) continue;
                await KeepAsync(ledger, pack);
                await RecordWithdrawalsAsync(ledger, pack);
                _seen.Add(pack.Pack.TextDigest);
            }
        }
        catch (LedgerException e)
        {
            ServiceLog.LedgerFailed(log, e.Told.Code, e.Told.Text);
        }
    }

    public async Task KeepAsync(RecordLedger ledger, TakenPack pack)
    {
        if (_kept.ContainsKey(pack.Pack.TextDigest)) return;
        await ledger.StorePackAsync(RecordedReading.TextsOf(pack.Pack, pack.Files));
        _kept[pack.Pack.TextDigest] = true;
        keeper.Packs!.Add(pack.Pack.TextDigest, pack.Compiled);
    }

    private async Task RecordWithdrawalsAsync(RecordLedger ledger, TakenPack pack)
    {
        foreach (var withdrawal in pack.Pack.Withdrawn)
        {
            var result = await ledger.AppendAsync(new WithdrawalEntry
            {
                Actor = Actors.Service,
                Rule = withdrawal.Rule,
                Pack = pack.Pack.Name,
                Reason = "withdrawn-by-pack",
            });
            if (result is AppendResult.Appended) ServiceLog.Withdrawn(log, withdrawal.Rule, pack.Pack.Name);
        }
    }
}
