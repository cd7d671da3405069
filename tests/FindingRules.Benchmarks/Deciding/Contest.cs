using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Studies;
using FindingRules.Workload;

namespace FindingRules.Benchmarks.Deciding;

/// <summary>The rules and studies that all sides are given, and this engine's side.</summary>
internal sealed class Contest
{
    private const int StudiesCompared = 32;

    private readonly WorkloadPack _pack;

    public Contest(int rules, int studies, double shareSent = FactsDrawing.ShareSent)
    {
        Rules = new RuleDrawing(RuleDrawing.Seed).Make(rules);
        _pack = new WorkloadPack(Rules);
        Facts = new FactsDrawing(seed: 2, shareSent).Make(studies);
        Studies = [.. Facts.Select(f => _pack.StudyOf(f))];
        Network = NetworkCompiler.Compile(_pack.Pack);
        Fired = new int[rules];
    }

    public ImmutableArray<RuleSketch> Rules { get; }

    public ImmutableArray<StudyFacts> Facts { get; }

    public ImmutableArray<Study> Studies { get; }

    public RuleNetwork Network { get; }

    /// <summary>Room for the numbers of the rules that fire on a study.</summary>
    public int[] Fired { get; }

    /// <summary>Fails unless another side fires the rules that this engine fires.</summary>
    public void AssertAgrees(Func<int, int[], int> side) => Agreement.Assert(
        Math.Min(Studies.Length, StudiesCompared), Rules.Length,
        (study, fired) => WorkloadPack.Fired(Network, Studies[study], fired), side);

    /// <summary>Decides every study and asks something of each.</summary>
    public int ForEach(Func<Examination, Study, int> ask)
    {
        var sum = 0;
        foreach (var study in Studies)
        {
            var examination = Network.Examinations.Take();
            sum += ask(examination, study);
            Network.Examinations.Return(examination);
        }
        return sum;
    }
}
