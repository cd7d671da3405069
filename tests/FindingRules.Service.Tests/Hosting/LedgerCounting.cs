using FindingRules.Ledger;
using FindingRules.Ledger.Records;

namespace FindingRules.Service.Tests.Hosting;

internal static class LedgerCounting
{
    /// <summary>Readings only: that the invented pack withdraws a rule is a record as well.</summary>
    public static async Task<int> CountReadingsAsync(this RecordLedger ledger)
    {
        var count = 0;
        await foreach (var record in ledger.ExportAsync())
            if (record.Kind == RecordKind.Reading) count++;
        return count;
    }
}
