using System.Diagnostics;
using FindingRules.Ledger;
using FindingRules.Ledger.Records;

namespace FindingRules.Benchmarks.Ledger;

/// <summary>64 writers that each wait for their answer before they send the next record.</summary>
internal static class AppendRate
{
    private const int Writers = 64;

    public static async Task<Rate> MeasureAsync(RecordLedger ledger, TimeSpan length)
    {
        await ledger.StorePackAsync(SampleRecords.Pack);
        await RunAsync(ledger, TimeSpan.FromSeconds(1));
        return await RunAsync(ledger, length);
    }

    private static async Task<Rate> RunAsync(RecordLedger ledger, TimeSpan length)
    {
        var entries = Enumerable.Range(0, 1000).Select(i => SampleRecords.Reading(i)).ToArray();
        var watch = Stopwatch.StartNew();
        var waits = await Task.WhenAll(
            Enumerable.Range(0, Writers).Select(w => Task.Run(() => WriteAsync(ledger, entries, w, watch, length))));
        return Rate.Of(watch.Elapsed, waits.SelectMany(w => w));
    }

    private static async Task<List<TimeSpan>> WriteAsync(
        RecordLedger ledger, ReadingEntry[] entries, int writer, Stopwatch watch, TimeSpan length)
    {
        var waits = new List<TimeSpan>(20_000);
        for (var i = writer; watch.Elapsed < length; i += Writers)
        {
            var began = watch.Elapsed;
            await ledger.AppendAsync(entries[i % entries.Length]);
            waits.Add(watch.Elapsed - began);
        }
        return waits;
    }
}
