using System.Diagnostics;
using FindingRules.Model.Messages;
using FindingRules.Model.Text;
using FindingRules.Testing;
using Xunit;
using Xunit.Abstractions;

namespace FindingRules.Tests.Speed;

/// <summary>
/// What must not get slow or large. Machines differ and others work on them too, so the best of several tries counts,
/// and the bounds lie well above what a desk machine needs.
/// </summary>
[Collection(Alone.Name)]
public sealed class LargePackTests(ITestOutputHelper output, LargePacks packs) : IClassFixture<LargePacks>
{
    private const int Tries = 5;
    private static readonly SourceText Study = new("study.json", LargePack.Study);

    [Fact]
    public void A_pack_of_5000_rules_loads_in_5_seconds_and_300_megabytes()
    {
        var files = LargePack.Files(5_000);
        var seconds = double.MaxValue;
        for (var attempt = 0; attempt < Tries && seconds > 5; attempt++)
        {
            var watch = Stopwatch.StartNew();
            Assert.Equal(5_000, CompiledPack.Load(files).Pack?.Pack.Rules.Length);
            seconds = Math.Min(seconds, watch.Elapsed.TotalSeconds);
        }
        var before = GC.GetTotalMemory(forceFullCollection: true);
        var load = CompiledPack.Load(files);
        var kept = (GC.GetTotalMemory(forceFullCollection: true) - before) / 1048576.0;
        GC.KeepAlive(load);
        output.WriteLine($"loaded in {seconds:0.00} s; keeps {kept:0} MB; the process held {Environment.WorkingSet / 1048576} MB");
        Assert.InRange(seconds, 0, 5);
        Assert.InRange(kept, 0, 300);
    }

    [Fact]
    public void A_reading_takes_less_than_a_millisecond()
    {
        var milliseconds = BestMedian(packs.Large);
        output.WriteLine($"a reading takes {milliseconds:0.000} ms, from JSON text to impression");
        Assert.InRange(milliseconds, 0, 1);
    }

    [Fact]
    public void A_reading_does_not_grow_with_the_pack()
    {
        var ratio = double.MaxValue;
        for (var attempt = 0; attempt < Tries && ratio > 1.3; attempt++)
            ratio = Math.Min(ratio, BestMedian(packs.Twice) / BestMedian(packs.Large));
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

    private static double BestMedian(CompiledPack pack) => Enumerable.Range(0, Tries).Min(_ => Median(pack));

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
