using System.Diagnostics;
using System.Globalization;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Testing;

namespace FindingRules.Benchmarks.Loading;

/// <summary>How long packs take to load and what they keep; and what readings notice while another pack is loaded and takes its place.</summary>
internal static class LoadCommand
{
    private static readonly LoadLimits _limits = LoadLimits.Default with { FileBytes = 1 << 28, PackBytes = 1 << 29 };

    public static int Run(string[] args)
    {
        if (args is ["swap"]) return Swap();
        Console.WriteLine("| rules | s | KB kept a rule |");
        Console.WriteLine("|---|---|---|");
        foreach (var rules in args.Select(int.Parse)) Load(rules);
        return 0;
    }

    private static void Load(int rules)
    {
        var files = LargePack.Files(rules);
        var best = double.MaxValue;
        for (var i = 0; i < (rules > 10_000 ? 1 : 3); i++)
        {
            var began = Stopwatch.GetTimestamp();
            if (CompiledPack.Load(files, _limits) is { Pack: null } failed) throw new InvalidOperationException(failed.Messages[0].Text);
            best = Math.Min(best, Stopwatch.GetElapsedTime(began).TotalSeconds);
        }
        var before = GC.GetTotalMemory(forceFullCollection: true);
        var kept = CompiledPack.Load(files, _limits);
        var bytes = GC.GetTotalMemory(forceFullCollection: true) - before;
        GC.KeepAlive(kept);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {rules:N0} | {best:0.00} | {bytes / 1024.0 / rules:0.0} |"));
    }

    private static int Swap()
    {
        var files = LargePack.Files(5_000);
        var inForce = CompiledPack.Load(files).Pack!;
        var study = new SourceText("study.json", LargePack.Study);
        Console.WriteLine("| meanwhile | readings | longest collection, ms | 99.9th percentile of a reading, ms | longest reading, ms |");
        Console.WriteLine("|---|---|---|---|---|");
        Watch("nothing", static () => Thread.Sleep(TimeSpan.FromSeconds(5)));
        Watch("5,000 rules loaded and swapped in, five times", () =>
        {
            for (var i = 0; i < 5; i++) Volatile.Write(ref inForce, CompiledPack.Load(files).Pack!);
        });
        return 0;

        void Watch(string name, Action meanwhile)
        {
            for (var i = 0; i < 2_000; i++) inForce.Read(study);
            using var loading = Task.Factory.StartNew(meanwhile, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
            var (times, pause, collections) = (new List<double>(), 0.0, GC.CollectionCount(0));
            while (!loading.IsCompleted)
            {
                var began = Stopwatch.GetTimestamp();
                Volatile.Read(ref inForce).Read(study);
                times.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
                if (GC.CollectionCount(0) == collections) continue;
                collections = GC.CollectionCount(0);
                foreach (var each in GC.GetGCMemoryInfo(GCKind.Any).PauseDurations) pause = Math.Max(pause, each.TotalMilliseconds);
            }
            times.Sort();
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"| {name} | {times.Count:N0} | {pause:0.0} | {times[(int)(times.Count * 0.999)]:0.00} | {times[^1]:0.0} |"));
        }
    }
}
