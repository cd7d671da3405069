using System.Diagnostics;
using FindingRules.Model.Messages;
using FindingRules.Model.Text;
using FindingRules.Testing;
using Xunit;
using Xunit.Abstractions;

namespace FindingRules.Tests.Speed;

/// <summary>
/// What must not get slow or large. Other work on the machine must not decide: loading is measured in processor time, and
/// of a reading, which is too short for that, the best of several medians counts.
/// </summary>
[Collection(Alone.Name)]
public sealed class LargePackTests(ITestOutputHelper output, LargePacks packs) : IClassFixture<LargePacks>
{
    private const int Tries = 20;
    private const double Megabyte = 1024 * 1024;
    private static readonly SourceText Study = new("study.json", LargePack.Study);

    [Fact]
    public void A_pack_of_5000_rules_loads_in_5_seconds_and_300_megabytes()
    {
        var files = LargePack.Files(5_000);
        var before = GC.GetTotalMemory(forceFullCollection: true);
        var began = ProcessorTime();
        var load = CompiledPack.Load(files);
        var seconds = (ProcessorTime() - began).TotalSeconds;
        var kept = (GC.GetTotalMemory(forceFullCollection: true) - before) / Megabyte;
        output.WriteLine($"loaded in {seconds:0.00} s; keeps {kept:0} MB; the process holds {Environment.WorkingSet / Megabyte:0} MB");
        Assert.Equal(5_000, load.Pack?.Pack.Rules.Length);
        Assert.InRange(seconds, 0, 5);
        Assert.InRange(kept, 0, 300);
    }

    [Fact]
    public void A_reading_takes_less_than_a_millisecond()
    {
        var milliseconds = Best(() => Median(packs.Large), 1);
        output.WriteLine($"a reading takes {milliseconds:0.000} ms, from JSON text to impression");
        Assert.InRange(milliseconds, 0, 1);
    }

    [Fact]
    public void A_reading_does_not_grow_with_the_pack()
    {
        var ratio = Best(() => Median(packs.Twice) / Median(packs.Large), 1.5);
        output.WriteLine($"twice the rules take {ratio:0.00} times as long to read");
        Assert.InRange(ratio, 0, 1.5);
    }

    [Fact]
    public void The_study_is_answered()
    {
        var read = packs.Large.Read(Study);
        Assert.DoesNotContain(read.Messages, m => m.Severity == Severity.Error);
        Assert.NotEmpty(read.Reading!.Suggestions);
        Assert.NotEmpty(read.Reading.NextSteps);
        Assert.NotEmpty(read.Reading.Cautions);
    }

    private static TimeSpan ProcessorTime()
    {
        using var process = Process.GetCurrentProcess();
        return process.TotalProcessorTime;
    }

    // Tries again only where the bound was missed.
    private static double Best(Func<double> measure, double bound)
    {
        var best = measure();
        for (var i = 1; i < Tries && best > bound; i++) best = Math.Min(best, measure());
        return best;
    }

    private static double Median(CompiledPack pack)
    {
        var times = new double[201];
        for (var i = 0; i < times.Length; i++)
        {
            var start = Stopwatch.GetTimestamp();
            pack.Read(Study);
            times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }
        Array.Sort(times);
        return times[times.Length / 2];
    }
}

/// <summary>The packs to measure with, loaded once.</summary>
public sealed class LargePacks
{
    public CompiledPack Large { get; } = Load(5_000);

    public CompiledPack Twice { get; } = Load(10_000);

    private static CompiledPack Load(int rules)
    {
        var load = CompiledPack.Load(LargePack.Files(rules));
        return load.Pack ?? throw new InvalidOperationException(string.Join('\n', load.Messages.Take(20).Select(m => $"{m.Location} {m.Code} {m.Text}")));
    }
}

/// <summary>Measures run while no other test of this assembly does.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class Alone
{
    public const string Name = "alone";
}
