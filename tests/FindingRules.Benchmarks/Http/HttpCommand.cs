using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using FindingRules.Service;
using FindingRules.Testing;

namespace FindingRules.Benchmarks.Http;

/// <summary>
/// Requests a second of the service and of <see cref="BareEndpoint"/>, in turn on the same machine, each in a process of its
/// own, on loopback; the load comes from wrk. Only the ratio means anything on another machine.
/// </summary>
internal static partial class HttpCommand
{
    private const string Serve = "serve";
    private const string Bare = "bare";
    private const int Rounds = 3;
    private static readonly string[] _sides = [Bare, Serve];

    public static int Run(string[] args) => args switch
    {
        [Bare, var url] => RunBare(url),
        [Serve, var url] => ServiceHost.RunAsync(
            new ServiceOptions { PackFolders = [Repository.PathOf("rules", "msk-ultrasound")], Urls = [url], Ledger = ServiceOptions.NoLedger }, Console.Error).GetAwaiter().GetResult(),
        [] => Compare(10),
        [var seconds] => Compare(int.Parse(seconds, CultureInfo.InvariantCulture)),
        _ => throw new ArgumentException("expected: http [seconds]"),
    };

    private static int RunBare(string url)
    {
        BareEndpoint.Build(url).Run();
        return 0;
    }

    private static int Compare(int seconds)
    {
        var study = Repository.PathOf("tests", "FindingRules.Benchmarks", "Http", "study.json");
        var script = WriteScript(study);
        var best = new Dictionary<string, double>();
        for (var round = 0; round < Rounds; round++)
            foreach (var side in _sides)
            {
                var measured = Measure(side, script, seconds);
                Console.WriteLine($"{side,-6} {measured.PerSecond,9:F0} requests/s   99th percentile {measured.Tail}");
                best[side] = Math.Max(best.GetValueOrDefault(side), measured.PerSecond);
            }
        File.Delete(script);
        Console.WriteLine($"study {new FileInfo(study).Length} bytes; best of {Rounds}: service/bare = {best[Serve] / best[Bare]:F2}");
        return 0;
    }

    private static (double PerSecond, string Tail) Measure(string side, string script, int seconds)
    {
        var url = $"http://127.0.0.1:{(side == Bare ? 18181 : 18182)}";
        using var server = Process.Start(new ProcessStartInfo(Environment.ProcessPath!, ["http", side, url]) { RedirectStandardError = true })!;
        server.ErrorDataReceived += static (_, _) => { };
        server.BeginErrorReadLine();
        try
        {
            UntilReady(url);
            Wrk(url, script, 3);
            var said = Wrk(url, script, seconds);
            if (said.Contains("Non-2xx", StringComparison.Ordinal)) throw new InvalidOperationException($"{side} did not answer every request:\n{said}");
            return (double.Parse(Rate().Match(said).Groups[1].Value, CultureInfo.InvariantCulture), Tail().Match(said).Groups[1].Value);
        }
        finally
        {
            server.Kill();
            server.WaitForExit();
        }
    }

    private static void UntilReady(string url)
    {
        using var client = new HttpClient();
        for (var tries = 0; ; tries++)
        {
            try
            {
                if (client.GetAsync($"{url}/readyz").GetAwaiter().GetResult().IsSuccessStatusCode) return;
            }
            catch (HttpRequestException) when (tries < 200)
            {
                // Not listening yet.
            }
            if (tries >= 200) throw new TimeoutException($"{url} did not become ready");
            Thread.Sleep(50);
        }
    }

    private static string WriteScript(string study)
    {
        var path = Path.GetTempFileName();
        File.WriteAllText(path, $"""
            wrk.method = "POST"
            local file = io.open("{study}")
            wrk.body = file:read("*a")
            file:close()
            wrk.headers["Content-Type"] = "application/json"
            """);
        return path;
    }

    private static string Wrk(string url, string script, int seconds)
    {
        try
        {
            using var wrk = Process.Start(new ProcessStartInfo(
                "wrk", ["-t1", "-c16", $"-d{seconds}s", "--latency", "-s", script, $"{url}/v1/readings"])
            { RedirectStandardOutput = true })!;
            var said = wrk.StandardOutput.ReadToEnd();
            wrk.WaitForExit();
            return said;
        }
        catch (Win32Exception)
        {
            throw new InvalidOperationException("wrk is needed; Debian has it as the package wrk");
        }
    }

    [GeneratedRegex(@"Requests/sec:\s+([\d.]+)")]
    private static partial Regex Rate();

    [GeneratedRegex(@"99%\s+(\S+)")]
    private static partial Regex Tail();
}
