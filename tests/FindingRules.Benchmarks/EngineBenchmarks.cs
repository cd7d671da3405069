using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using FindingRules.Benchmarks.Peers;
using FindingRules.Benchmarks.Workload;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Normalising;
using FindingRules.Model.Studies;

namespace FindingRules.Benchmarks;

/// <summary>
/// The rules of a seeded workload, decided by this engine and by what else a program might do. The engine tells what is
/// true, false and unknown, who yields and what each topic comes to; the others only find what fires. All are first shown
/// to fire the same rules. Each measured call goes through <see cref="Studies"/> different studies.
/// </summary>
[MemoryDiagnoser]
public class EngineBenchmarks
{
    public const int Studies = 1024;

    private readonly int[] _fired = new int[50_000];
    private ImmutableArray<StudyFacts> _facts;
    private ImmutableArray<Study> _studies;
    private Firing _handWritten = null!;
    private Firing _closures = null!;
    private RuleNetwork _network = null!;

    [Params(50, 500, 5_000, 50_000)]
    public int Rules { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        var rules = new RuleDrawing(seed: 1).Make(Rules);
        var pack = new WorkloadPack(rules);
        _facts = new StudyDrawing(seed: 2).Make(Studies);
        _studies = [.. _facts.Select(f => pack.StudyOf(f))];
        _network = NetworkCompiler.Compile(pack.Pack);
        (_handWritten, _closures) = (HandWritten.Compile(rules), Closures.Compile(rules));
        Agreement.Assert(
            Math.Min(Studies, 32), Rules, (study, fired) => _handWritten(_facts[study], fired), (study, fired) => _closures(_facts[study], fired),
            (study, fired) => WorkloadPack.Fired(_network, _studies[study], fired));
    }

    [Benchmark(Baseline = true, OperationsPerInvoke = Studies, Description = "if by if, compiled")]
    public int IfByIf()
    {
        var count = 0;
        foreach (ref readonly var study in _facts.AsSpan()) count += _handWritten(study, _fired);
        return count;
    }

    [Benchmark(OperationsPerInvoke = Studies, Description = "tree of closures")]
    public int TreeOfClosures()
    {
        var count = 0;
        foreach (ref readonly var study in _facts.AsSpan()) count += _closures(study, _fired);
        return count;
    }

    [Benchmark(OperationsPerInvoke = Studies, Description = "this engine, laying out the study only")]
    public int LayingOut()
    {
        var count = 0;
        foreach (var study in _studies)
        {
            var examination = _network.Examinations.Take();
            StudyLayout.LayOut(examination, study);
            count += examination.Count;
            _network.Examinations.Return(examination);
        }
        return count;
    }

    [Benchmark(OperationsPerInvoke = Studies, Description = "this engine, with what is borderline")]
    public int Widened()
    {
        var count = 0;
        foreach (var study in _studies)
        {
            var examination = _network.Examinations.Take();
            Evaluator.Settle(examination, study);
            WidenedDecision.Run(examination);
            count += examination.Count;
            _network.Examinations.Return(examination);
        }
        return count;
    }

    [Benchmark(OperationsPerInvoke = Studies, Description = "this engine, laid out and decided")]
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
}
