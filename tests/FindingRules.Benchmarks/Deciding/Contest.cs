using System.Collections.Immutable;
using System.Numerics;
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
        _pack.Number(Network);
        Fired = new int[rules];
    }

    public ImmutableArray<RuleSketch> Rules { get; }

    public ImmutableArray<StudyFacts> Facts { get; }

    public ImmutableArray<Study> Studies { get; }

    public RuleNetwork Network { get; }

    /// <summary>Room for the numbers of the rules that fire on a study.</summary>
    public int[] Fired { get; }

    /// <summary>Writes the numbers of the rules that are true, and counts those that are unknown.</summary>
    public (int Fired, int Unknown) Tell(Examination examination, int[] fired)
    {
        var (count, unknown) = (0, 0);
        for (var i = 0; i < examination.Count; i++)
        {
            if (!examination[i].IsPresent) continue;
            var numbers = _pack.NumbersOf(examination[i].Plan);
            var possible = examination[i].Settled.Possible;
            var unsure = examination[i].Settled.Unsure;
            for (var word = 0; word < possible.Length; word++)
            {
                unknown += BitOperations.PopCount(unsure[word]);
                for (var bits = possible[word] & ~unsure[word]; bits != 0; bits &= bits - 1)
                    fired[count++] = numbers[(64 * word) + BitOperations.TrailingZeroCount(bits)];
            }
        }
        return (count, unknown);
    }

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
