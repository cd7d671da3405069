using System.Diagnostics;
using System.Text.Json.Nodes;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Cli.Tests.Ledgers;

/// <summary>Two processes of the service on one ledger: both record at once, one is killed, the other goes on.</summary>
public sealed class TwoServicesTests
{
    [Theory, OnSqlite, OnPostgreSql]
    public async Task One_that_is_killed_stops_not_the_other_and_nothing_acknowledged_is_lost(Store store)
    {
        using var place = new LedgerPlace(store);
        using var one = new ServiceProcess(place);
        using var other = new ServiceProcess(place);
        await Task.WhenAll(one.ReadyAsync(), other.ReadyAsync());
        using var stop = new CancellationTokenSource();
        var sending = Enumerable.Range(0, 3).SelectMany(w => new[] { one.SendAsync(w, stop.Token), other.SendAsync(w, stop.Token) }).ToArray();
        await UntilAsync(() => one.Acknowledged.Count >= 30 && other.Acknowledged.Count >= 30);
        one.Kill();
        var before = other.Acknowledged.Count;
        await UntilAsync(() => other.Acknowledged.Count >= before + 60);
        await stop.CancelAsync();
        await Task.WhenAll(sending);

        var head = place.PathOf("head.json");
        await File.WriteAllTextAsync(head, CommandRun.Of("ledger", "head", place.Name, "--ledger-key", place.KeyFile).Out);
        var verified = CommandRun.Of("ledger", "verify", place.Name, "--head", head);
        Assert.True(verified.Code == ExitCode.Fine, verified.Error + verified.Out);
        var records = CommandRun.Of("ledger", "export", place.Name).Out.TrimEnd().Split('\n').Select(l => JsonNode.Parse(l)!).ToArray();
        Assert.Equal(Enumerable.Range(0, records.Length), records.Select(r => (int)r["index"]!));
        Assert.Single(records, r => (string)r["header"]!["kind"]! == "withdrawal");
        var recorded = records.Select(r => (string)r["header"]!["id"]!).ToHashSet();
        Assert.Equal(records.Length, recorded.Count);
        Assert.All(one.Acknowledged.Concat(other.Acknowledged), id => Assert.Contains(id, recorded));
    }

    private static async Task UntilAsync(Func<bool> isSo)
    {
        var start = Stopwatch.GetTimestamp();
        while (!isSo())
        {
            Assert.True(Stopwatch.GetElapsedTime(start) < TimeSpan.FromMinutes(1), "nothing is recorded any more");
            await Task.Delay(10);
        }
    }
}
