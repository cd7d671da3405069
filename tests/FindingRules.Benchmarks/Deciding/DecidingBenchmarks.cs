using BenchmarkDotNet.Attributes;
using FindingRules.Benchmarks.Peers;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Normalising;
using FindingRules.Workload;

namespace FindingRules.Benchmarks.Deciding;

/// <summary>
/// The rules of a seeded workload, decided by this engine and by what else a program might do. The engine tells what is
/// true, false and unknown, who yields and what each topic comes to; the others know two truth values and only find what
/// fires. Each is first shown to fire the same rules.
/// </summary>
[MemoryDiagnoser]
public class DecidingBenchmarks
{
    private const int Studies = 1024;

    // The general-purpose engines are slow enough to need few.
    private const int FewStudies = 16;

    private Contest _contest = null!;
    private SiteObject[][] _objects = [];
    private Firing _handWritten = null!;
    private Firing _closures = null!;
    private ReteEngine _rete = null!;
    private LambdaEngine _lambdas = null!;

    [Params(50, 500, 5_000)]
    public int Rules { get; set; }

    [GlobalSetup(Targets = [nameof(IfByIf), nameof(TreeOfClosures), nameof(LayingOut), nameof(Decision), nameof(Widened)])]
    public void Setup()
    {
        _contest = new Contest(Rules, Studies);
        (_handWritten, _closures) = (HandWrittenOf(Rules), Closures.Compile(_contest.Rules));
        _contest.AssertAgrees((study, fired) => _handWritten(_contest.Facts[study], fired));
        _contest.AssertAgrees((study, fired) => _closures(_contest.Facts[study], fired));
    }

    [GlobalSetup(Target = nameof(Lambdas))]
    public void SetupLambdas()
    {
        SetupObjects();
        _lambdas = new LambdaEngine(_contest.Rules);
        _contest.AssertAgrees((study, fired) => _lambdas.Run(_objects[study], fired));
    }

    [GlobalSetup(Target = nameof(Rete))]
    public void SetupRete()
    {
        SetupObjects();
        _rete = new ReteEngine(_contest.Rules);
        _contest.AssertAgrees((study, fired) => _rete.Run(_objects[study], fired));
    }

    [Benchmark(Baseline = true, OperationsPerInvoke = Studies, Description = "if by if, written out")]
    public int IfByIf() => Fire(_handWritten);

    [Benchmark(OperationsPerInvoke = Studies, Description = "tree of closures")]
    public int TreeOfClosures() => Fire(_closures);

    [Benchmark(OperationsPerInvoke = Studies, Description = "this engine, laying out the study only")]
    public int LayingOut() => _contest.ForEach(static (examination, study) =>
    {
        StudyLayout.LayOut(examination, study);
        return examination.Count;
    });

    [Benchmark(OperationsPerInvoke = Studies, Description = "this engine, laid out and decided")]
    public int Decision() => _contest.ForEach(static (examination, study) =>
    {
        Evaluator.Settle(examination, study);
        return examination.Count;
    });

    [Benchmark(OperationsPerInvoke = Studies, Description = "this engine, with what is borderline")]
    public int Widened() => _contest.ForEach(static (examination, study) =>
    {
        Evaluator.Settle(examination, study);
        WidenedDecision.Run(examination);
        return examination.Count;
    });

    [Benchmark(OperationsPerInvoke = FewStudies, Description = "RulesEngine")]
    public int Lambdas()
    {
        var count = 0;
        foreach (var study in _objects) count += _lambdas.Run(study, _contest.Fired);
        return count;
    }

    [Benchmark(OperationsPerInvoke = FewStudies, Description = "NRules")]
    public int Rete()
    {
        var count = 0;
        foreach (var study in _objects) count += _rete.Run(study, _contest.Fired);
        return count;
    }

    private int Fire(Firing side)
    {
        var count = 0;
        foreach (ref readonly var study in _contest.Facts.AsSpan()) count += side(study, _contest.Fired);
        return count;
    }

    private void SetupObjects()
    {
        _contest = new Contest(Rules, FewStudies);
        _objects = [.. _contest.Facts.Select(f => Enumerable.Range(0, WorkloadSize.Structures).Select(i => SiteObject.Of(i, f[i])).ToArray())];
    }

    private static Firing HandWrittenOf(int rules) => rules switch
    {
        50 => HandWritten50.Run,
        500 => HandWritten500.Run,
        _ => HandWritten5000.Run,
    };
}
