using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using FindingRules.Benchmarks.Peers;
using FindingRules.Benchmarks.Workload;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Studies;

namespace FindingRules.Benchmarks;

/// <summary>
/// The same workload in general-purpose rule engines. They know two truth values, so what is compared is which rules fire,
/// of rules that say nothing of what is missing. They are slow enough to need few studies.
/// </summary>
[MemoryDiagnoser]
public class PeerBenchmarks
{
    private const int Studies = 16;

    private ImmutableArray<Study> _studies;
    private SiteObject[][] _objects = null!;
    private int[] _fired = null!;
    private RuleNetwork _network = null!;
    private ReteEngine _rete = null!;
    private LambdaEngine _lambdas = null!;

    [Params(50, 500, 5_000)]
    public int Rules { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        var rules = new RuleDrawing(seed: 1).Make(Rules);
        var pack = new WorkloadPack(rules);
        var facts = new StudyDrawing(seed: 2).Make(Studies);
        _fired = new int[Rules];
        _objects = [.. facts.Select(f => Enumerable.Range(0, WorkloadSize.Structures).Select(i => SiteObject.Of(i, f[i])).ToArray())];
        _studies = [.. facts.Select(f => pack.StudyOf(f))];
        _network = NetworkCompiler.Compile(pack.Pack);
        (_rete, _lambdas) = (new ReteEngine(rules), new LambdaEngine(rules));
        Agreement.Assert(
            Studies, Rules, (study, fired) => WorkloadPack.Fired(_network, _studies[study], fired),
            (study, fired) => _rete.Run(_objects[study], fired), (study, fired) => _lambdas.Run(_objects[study], fired));
    }

    [Benchmark(Baseline = true, OperationsPerInvoke = Studies, Description = "this engine, laid out and decided")]
    public int Decision()
    {
        var count = 0;
        foreach (var study in _studies)
        {
            var examination = _network.Examinations.Take();
            Evaluator.Settle(examination, study);
            count += examination.Count;
            _network.Examinations.Return(examination);
        }
        return count;
    }

    [Benchmark(OperationsPerInvoke = Studies, Description = "RulesEngine")]
    public int Lambdas()
    {
        var count = 0;
        foreach (var study in _objects) count += _lambdas.Run(study, _fired);
        return count;
    }

    [Benchmark(OperationsPerInvoke = Studies, Description = "NRules")]
    public int Rete()
    {
        var count = 0;
        foreach (var study in _objects) count += _rete.Run(study, _fired);
        return count;
    }
}
