using BenchmarkDotNet.Attributes;
using FindingRules.Benchmarks.Peers;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Normalising;
using FindingRules.Model.Studies;
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
    private const int ManyStudies = 1024;

    // The general-purpose engines are slow enough to need few.
    private const int FewStudies = 16;

    // Laid out a study takes more room than sent: all of them would not lie in the cache.
    private const int LaidOutStudies = 64;

    private Contest _contest = null!;
    private Contest _few = null!;
    private Examination[] _laidOut = [];
    private SiteObject[][] _objects = [];
    private Firing _handWritten = null!;
    private Firing _closures = null!;
    private ReteEngine _rete = null!;
    private LambdaEngine _lambdas = null!;

    [Params(50, 500, 5_000)]
    public int Rules { get; set; }

    /// <summary>Different studies that a measured call goes through.</summary>
    public int Studies { get; set; } = ManyStudies;

    [GlobalSetup(Targets = [nameof(IfByIf), nameof(TreeOfClosures), nameof(LayingOut), nameof(Decided), nameof(LaidOutAndDecided), nameof(Topics), nameof(Widened)])]
    public void Setup()
    {
        _contest = new Contest(Rules, Studies);
        (_handWritten, _closures) = (HandWrittenOf(Rules), Closures.Compile(_contest.Rules));
        _contest.AssertAgrees((study, fired) => _handWritten(_contest.Facts[study], fired));
        _contest.AssertAgrees((study, fired) => _closures(_contest.Facts[study], fired));
        _laidOut = [.. _contest.Studies.Take(LaidOutStudies).Select(LaidOut)];
        _contest.AssertAgrees((study, fired) => _contest.Tell(Decide(_laidOut[study]), fired).Fired);
    }

    [GlobalSetup(Target = nameof(Lambdas))]
    public void SetupLambdas()
    {
        SetupObjects();
        _lambdas = new LambdaEngine(_few.Rules);
        _few.AssertAgrees((study, fired) => _lambdas.Run(_objects[study], fired));
    }

    [GlobalSetup(Target = nameof(Rete))]
    public void SetupRete()
    {
        SetupObjects();
        _rete = new ReteEngine(_few.Rules);
        _few.AssertAgrees((study, fired) => _rete.Run(_objects[study], fired));
    }

    [Benchmark(Baseline = true, OperationsPerInvoke = ManyStudies, Description = "if by if, written out")]
    public int IfByIf() => Fire(_handWritten);

    [Benchmark(OperationsPerInvoke = ManyStudies, Description = "tree of closures")]
    public int TreeOfClosures() => Fire(_closures);

    [Benchmark(OperationsPerInvoke = ManyStudies, Description = "this engine, laying out the study only")]
    public int LayingOut() => _contest.ForEach(static (examination, study) =>
    {
        StudyLayout.LayOut(examination, study);
        return examination.Count;
    });

    [Benchmark(OperationsPerInvoke = ManyStudies, Description = "this engine, of studies laid out before")]
    public int Decided()
    {
        var count = 0;
        for (var i = 0; i < Studies; i++) count += _contest.Tell(Decide(_laidOut[i % LaidOutStudies]), _contest.Fired).Fired;
        return count;
    }

    [Benchmark(OperationsPerInvoke = ManyStudies, Description = "this engine, laid out and decided")]
    public int LaidOutAndDecided() => _contest.ForEach((examination, study) =>
    {
        Evaluator.Settle(examination, study);
        return _contest.Tell(examination, _contest.Fired).Fired;
    });

    [Benchmark(OperationsPerInvoke = ManyStudies, Description = "this engine, and every topic")]
    public int Topics() => _contest.ForEach(static (examination, study) =>
    {
        Evaluator.Settle(examination, study);
        return WriteDown(examination);
    });

    [Benchmark(OperationsPerInvoke = ManyStudies, Description = "this engine, every topic, and what is borderline")]
    public int Widened() => _contest.ForEach(static (examination, study) =>
    {
        Evaluator.Settle(examination, study);
        WidenedDecision.Run(examination);
        return WriteDown(examination);
    });

    [Benchmark(OperationsPerInvoke = FewStudies, Description = "RulesEngine")]
    public int Lambdas()
    {
        var count = 0;
        foreach (var study in _objects) count += _lambdas.Run(study, _few.Fired);
        return count;
    }

    [Benchmark(OperationsPerInvoke = FewStudies, Description = "NRules")]
    public int Rete()
    {
        var count = 0;
        foreach (var study in _objects) count += _rete.Run(study, _few.Fired);
        return count;
    }

    private static int WriteDown(Examination examination)
    {
        for (var i = 0; i < examination.Count; i++) examination[i].WriteDown();
        return examination.Count;
    }

    private int Fire(Firing side)
    {
        var count = 0;
        foreach (ref readonly var study in _contest.Facts.AsSpan()) count += side(study, _contest.Fired);
        return count;
    }

    private Examination LaidOut(Study study)
    {
        var examination = new Examination(_contest.Network);
        StudyLayout.LayOut(examination, study);
        return examination;
    }

    private static Examination Decide(Examination laidOut)
    {
        LayeredDecision.Run(laidOut);
        return laidOut;
    }

    private void SetupObjects()
    {
        _few = new Contest(Rules, FewStudies);
        _objects = [.. _few.Facts.Select(f => Enumerable.Range(0, WorkloadSize.Structures).Select(i => SiteObject.Of(i, f[i])).ToArray())];
    }

    private static Firing HandWrittenOf(int rules) => rules switch
    {
        50 => HandWritten50.Run,
        500 => HandWritten500.Run,
        _ => HandWritten5000.Run,
    };
}
