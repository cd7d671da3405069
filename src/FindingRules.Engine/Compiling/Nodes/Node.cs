using FindingRules.Engine.Evaluating;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Compiling.Nodes;

/// <summary>
/// One condition of the network. Equal conditions of different rules are one node, decided once for each instance.
/// </summary>
internal abstract class Node(int id, bool usesPrecision)
{
    public int Id { get; } = id;

    /// <summary>Somewhere inside is a measure with a precision: widened, it may be decided differently.</summary>
    public bool UsesPrecision { get; } = usesPrecision;

    public Truth Decide(Examination examination, int instance, bool isWidened)
    {
        var memo = examination.MemoOf(instance, isWidened && UsesPrecision);
        if (memo[Id] is var known && known != 0) return (Truth)(known - 1);
        var truth = Work(examination, instance, isWidened && UsesPrecision);
        memo[Id] = (byte)(truth + 1);
        return truth;
    }

    protected abstract Truth Work(Examination examination, int instance, bool isWidened);
}
