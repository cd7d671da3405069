using BenchmarkDotNet.Attributes;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reference;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Text;
using FindingRules.Packs;
using FindingRules.Testing;

namespace FindingRules.Benchmarks;

/// <summary>The same study of four structures, read with packs of growing size: the cost must follow the study.</summary>
[MemoryDiagnoser]
public class ReadingBenchmarks
{
    private readonly SourceText _json = new("study.json", LargePack.Study);
    private CompiledPack _pack = null!;
    private RuleNetwork _network = null!;
    private Study _study = null!;

    [Params(500, 5_000, 10_000)]
    public int Rules { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        _pack = CompiledPack.Load(LargePack.Files(Rules)).Pack!;
        _network = NetworkCompiler.Compile(_pack.Pack);
        _study = StudyReader.Read(_json, _pack.Pack, LoadLimits.Default, new MessageBag())!;
        var (network, reference) = (Network(), Reference());
        if (!network.Rules.SequenceEqual(reference.Rules) || !network.Topics.SequenceEqual(reference.Topics))
            throw new InvalidOperationException("The network and the reference interpreter do not agree.");
    }

    [Benchmark(Baseline = true)]
    public Outcome Reference() => ReferenceInterpreter.Decide(_pack.Pack, _study);

    [Benchmark]
    public Outcome Network() => Evaluator.Decide(_network, _study);

    [Benchmark]
    public Reading NetworkInWords() => Evaluator.Evaluate(_network, _study);

    [Benchmark]
    public StudyReading FromJsonText() => _pack.Read(_json);
}
