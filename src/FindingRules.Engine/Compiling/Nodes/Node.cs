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
        var usesWidened = isWidened && UsesPrecision;
        if (examination.Memo.TryGet(Id, instance, usesWidened, out var known)) return known;
        examination.Work.Nodes++;
        var truth = Work(examination, instance, usesWidened);
        examination.Memo.Set(Id, instance, usesWidened, truth);
        return truth;
    }

    protected abstract Truth Work(Examination examination, int instance, bool isWidened);
}
