using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net.Sockets;
using System.Text;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Cli.Tests.Ledgers;

/// <summary><c>findingrules serve</c> as a process of its own.</summary>
internal sealed class ServiceProcess : IDisposable
{
    private readonly Process _process;
    private readonly HttpClient _client;

    /// <param name="mostKilobytes">To which any file of the process may grow, as on a disk without room for more; 0 for no bound.</param>
    public ServiceProcess(LedgerPlace place, int mostKilobytes = 0)
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
        var start = mostKilobytes == 0
            ? new ProcessStartInfo("dotnet", arguments)
            : new ProcessStartInfo("bash", ["-c", $"trap '' XFSZ; ulimit -S -f {mostKilobytes}; exec dotnet \"$@\"", "dotnet", .. arguments]);
        start.RedirectStandardError = true;
        // The runtime maps its own code by way of a file that would be too large.
        if (mostKilobytes > 0) start.Environment["DOTNET_EnableWriteXorExecute"] = "0";
        _process = Process.Start(start)!;
        _process.ErrorDataReceived += (_, _) => { };
        _process.BeginErrorReadLine();
    }

    public ConcurrentQueue<string> Acknowledged { get; } = [];

    public HttpClient Client => _client;

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

    /// <summary>Lets its files grow again.</summary>
    public async Task MakeRoomAsync()
    {
        using var limits = Process.Start("prlimit", ["--pid", $"{_process.Id}", "--fsize=unlimited:unlimited"]);
        await limits.WaitForExitAsync();
        Assert.Equal(0, limits.ExitCode);
    }

    /// <summary>As a supervisor stops it; it writes out what it owes.</summary>
    public async Task StopAsync()
    {
        using var signal = Process.Start("kill", ["-TERM", $"{_process.Id}"]);
        await signal.WaitForExitAsync();
        await _process.WaitForExitAsync();
        Assert.Equal(0, _process.ExitCode);
    }

    public void Dispose()
    {
        if (!_process.HasExited) _process.Kill();
        _process.Dispose();
        _client.Dispose();
    }
}
