using System.Diagnostics;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Signing;
using FindingRules.Ledger.Tests.Stores;
using FindingRules.Ledger.Verifying;
using FindingRules.Testing.Stores;
using Xunit;
using Xunit.Abstractions;

namespace FindingRules.Ledger.Tests.Processes;

/// <summary>
/// A process under load is killed at random moments: all it acknowledged is there once, the tree verifies, and the
/// next start is an ordinary one.
/// <c>FINDINGRULES_KILLS</c> says how many times; on a server, where the commit is its own, a fifth of that.
/// </summary>
public sealed class KillTests(ITestOutputHelper output)
{
    private const int KillsOfOneLedger = 10;
    private static readonly int Kills = int.Parse(Environment.GetEnvironmentVariable("FINDINGRULES_KILLS") ?? "20");

    [Theory, OnSqlite, OnPostgreSql]
    public async Task Killed_at_any_moment_nothing_acknowledged_is_lost(Store store)
    {
        var watch = Stopwatch.StartNew();
        var kills = store == Store.Sqlite ? Kills : Math.Max(5, Kills / 5);
        var (random, acknowledged, before) = (new Random(), 0, 0);
        var next = new AppenderProcess();
        for (var done = 0; done < kills;)
        {
            using var place = new LedgerPlace(store);
            await using (var begun = await place.OpenAsync()) await begun.StorePackAsync(Entries.Pack);
            var kept = new Kept([], null);
            for (var of = 0; of < KillsOfOneLedger && done < kills; of++, done++)
            {
                using var process = next;
                next = new AppenderProcess();
                await process.BeginAsync(place, of * 1_000_000);
                // Most moments are of the load, some of the start.
                if (random.Next(5) > 0) await process.FirstAsync();
                var pause = TimeSpan.FromMilliseconds(random.NextDouble() * 40);
                await Task.Delay(pause);
                await process.KillAsync();
                acknowledged += process.Acknowledged.Count;
                before += process.Acknowledged.IsEmpty ? 1 : 0;
                foreach (var (number, id) in process.Acknowledged) kept.Acknowledged.Add(number, id);
                kept = await CheckAsync(place, kept, process.Acknowledged.Keys.Take(2), $"kill {done} after {pause.TotalMilliseconds:0} ms");
            }
        }
        next.Dispose();
        output.WriteLine(
            $"{kills} kills, {acknowledged} records acknowledged, {before} kills before the first, {watch.Elapsed.TotalSeconds:0} s");
        Assert.True(acknowledged > kills, "the processes were killed before they had begun to append");
    }

    /// <summary>What was promised by all processes of a ledger so far, and the tree head after the kill before.</summary>
    private sealed record Kept(Dictionary<int, Guid> Acknowledged, SignedTreeHead? Head);

    private static async Task<Kept> CheckAsync(LedgerPlace place, Kept kept, IEnumerable<int> again, string when)
    {
        await using var ledger = await place.OpenAsync();
        var head = (await ledger.GetTreeHeadAsync())!;
        var records = await ledger.ExportAsync().ToListAsync();
        Assert.True(head.Size == records.Count, when);
        var found = records.ToLookup(r => r.Id);
        Assert.All(kept.Acknowledged, a =>
            Assert.True(found[a.Value].Count() == 1, $"{when}: {a.Key} is there {found[a.Value].Count()} times"));
        Assert.Equal(records.Count, records.Select(r => r.Body!.Terms.Study).Distinct().Count());
        foreach (var number in again)
            Assert.Equal(kept.Acknowledged[number], Assert.IsType<AppendResult.Repeated>(
                await ledger.AppendAsync(Appender.Entry(number), Appender.Key(number))).First.Id);
        var report = await LedgerVerifier.VerifyAsync(place.Location, kept.Head ?? head);
        Assert.True(report.IsSound, $"{when}: {string.Join("; ", report.Problems.Select(p => p.Text))}");
        return kept with { Head = head };
    }

    /// <summary>Two processes share a server; one is killed while both append, and the other goes on.</summary>
    [Theory, OnPostgreSql]
    public async Task One_of_two_killed_does_not_stop_the_other(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        await ledger.StorePackAsync(Entries.Pack);
        var mine = new List<Guid>();
        using var one = new AppenderProcess();
        using var other = new AppenderProcess();
        await one.BeginAsync(place, 0);
        await other.BeginAsync(place, 10_000_000);
        for (var i = 0; i < 120; i++)
        {
            mine.Add((await ledger.AddAsync(Entries.Reading(20_000_000 + i))).Id);
            if (i == 40) await one.KillAsync();
        }
        var (killedAt, otherBefore) = (one.Acknowledged.Count, other.Acknowledged.Count);
        for (var wait = 0; wait < 200 && other.Acknowledged.Count < otherBefore + 50; wait++) await Task.Delay(50);
        Assert.True(other.Acknowledged.Count >= otherBefore + 50, "the other process stands still");
        Assert.True(killedAt > 0);
        await other.KillAsync();

        var records = await ledger.ExportAsync().ToListAsync();
        Assert.Equal(Enumerable.Range(0, records.Count).Select(i => (long)i), records.Select(r => r.Index));
        var found = records.Select(r => r.Id).ToHashSet();
        Assert.Equal(records.Count, found.Count);
        Assert.All(mine.Concat(one.Acknowledged.Values).Concat(other.Acknowledged.Values), id => Assert.Contains(id, found));
        var report = await LedgerVerifier.VerifyAsync(place.Location, await ledger.GetTreeHeadAsync());
        Assert.Empty(report.Problems);
    }
}
