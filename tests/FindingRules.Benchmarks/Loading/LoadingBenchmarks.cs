using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using FindingRules.Model.Packs;
using FindingRules.Testing;

namespace FindingRules.Benchmarks.Loading;

/// <summary>Files of a pack to a pack that is ready to read studies.</summary>
[MemoryDiagnoser]
public class LoadingBenchmarks
{
    private ImmutableArray<PackFile> _files;

    [Params(100, 1_000, 5_000)]
    public int Rules { get; set; }

    [GlobalSetup]
    public void Setup() => _files = LargePack.Files(Rules);

    [Benchmark]
    public PackLoad Load() => CompiledPack.Load(_files);
}
