using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net.Sockets;
using System.Text;
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

    private sealed class ServiceProcess : IDisposable
    {
        private readonly Process _process;
        private readonly HttpClient _client;

        public ServiceProcess(LedgerPlace place)
        {
            using var free = new TcpListener(System.Net.IPAddress.Loopback, 0);
            free.Start();
            var address = $"http://127.0.0.1:{((System.Net.IPEndPoint)free.LocalEndpoint).Port}";
            free.Stop();
            _client = new HttpClient { BaseAddress = new Uri(address) };
            string[] arguments =
            [
                Path.Combine(AppContext.BaseDirectory, "FindingRules.Cli.dll"), "serve", CommandRun.ExamplePack, "--urls", address,
                "--ledger", place.Name, "--ledger-key", place.KeyFile,
            ];
            _process = Process.Start(new ProcessStartInfo("dotnet", arguments) { RedirectStandardError = true })!;
            _process.ErrorDataReceived += (_, _) => { };
            _process.BeginErrorReadLine();
        }

        public ConcurrentQueue<string> Acknowledged { get; } = [];

        public async Task ReadyAsync()
        {
            var start = Stopwatch.GetTimestamp();
            while (Stopwatch.GetElapsedTime(start) < TimeSpan.FromMinutes(1))
            {
                try
                {
                    if ((await _client.GetAsync("/readyz")).IsSuccessStatusCode) return;
                }
                catch (HttpRequestException)
                {
                    // It does not listen yet.
                }
                await Task.Delay(50);
            }
            throw new TimeoutException("the service does not get ready");
        }

        public async Task SendAsync(int writer, CancellationToken stop)
        {
            try
            {
                for (var i = 0; !stop.IsCancellationRequested; i++)
                {
                    var key = $"S-{_process.Id}-{writer}-{i}";
                    using var study = new StringContent(
                        Studies.FullThickness.Replace("S-7F3K", key, StringComparison.Ordinal), Encoding.UTF8, "application/json");
                    using var answer = await _client.PostAsync("/v1/readings", study, CancellationToken.None);
                    if (answer.Headers.Location is { } location) Acknowledged.Enqueue(location.ToString().Split('/')[^1]);
                }
            }
            catch (HttpRequestException)
            {
                // It was killed.
            }
        }

        public void Kill() => _process.Kill();

        public void Dispose()
        {
            if (!_process.HasExited) _process.Kill();
            _process.Dispose();
            _client.Dispose();
        }
    }
}
