using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Packs;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Asking;

/// <summary>
/// Everything that a reading does not say and could still come to say, and what a supposed answer makes of it. A step
/// that is done already is not among them.
/// </summary>
internal sealed class OpenConsequences
{
    private readonly Examination _examination;
    private readonly List<Consequence>?[] _byInstance;

    public OpenConsequences(Examination examination, AskTables tables)
    {
        _examination = examination;
        _byInstance = new List<Consequence>?[examination.Count];
        for (var i = 0; i < _byInstance.Length; i++)
            if (examination[i].IsPresent)
                _byInstance[i] = [.. Topics(i), .. Others(i, tables)];
    }

    public IEnumerable<Consequence> At(int index) => _byInstance[index] ?? [];

    public Truth StateOf(Consequence consequence)
    {
        var instance = _examination[consequence.Index];
        if (consequence.Conclusion is null) return Emission.Of(instance.TopicAt(consequence.Topic), 1UL << consequence.Value);
        var state = Truth.False;
        foreach (var rule in consequence.Rules) state = Kleene.Or(state, StateOf(instance, rule, consequence.Conclusion));
        return state;
    }

    private IEnumerable<Consequence> Topics(int index)
    {
        var topics = _examination[index].Plan.Topics;
        for (var t = 0; t < topics.Length; t++)
        {
            if (_examination[index].TopicAt(t) is not { IsDecided: true, Status: TopicStatus.Open } state) continue;
            var values = topics[t].Topic.Values;
            for (var v = 0; v < values.Length; v++)
                if ((state.Possible & (1UL << v)) != 0 && values[v].Says is not null)
                    yield return new Consequence(Weights.Of(values[v].Certainty), index, t, v, null, []);
        }
    }

    private IEnumerable<Consequence> Others(int index, AskTables tables)
    {
        foreach (var (conclusion, weight, rules) in tables.ConsequencesOf(_examination[index].Plan).All)
        {
            var consequence = new Consequence(weight, index, -1, -1, conclusion, rules);
            if (StateOf(consequence) == Truth.Unknown && !IsDone(conclusion, index)) yield return consequence;
        }
    }

    private bool IsDone(Conclusion conclusion, int index) => conclusion switch
    {
        NextStepConclusion next => DoneSteps.IsDone(_examination, next.Step),
        EvaluateConclusion evaluate => DoneSteps.IsDone(_examination, evaluate.Step, index),
        _ => false,
    };

    private static Truth StateOf(Instance instance, int rule, Conclusion conclusion) => conclusion is CautionConclusion
        ? instance.StateOf(rule).Truth
        : Emission.Of(instance, rule);
}

/// <param name="Topic">Position of the topic whose value would be said; -1 for a step or a caution.</param>
/// <param name="Conclusion">The step or caution, as one of the rules names it.</param>
/// <param name="Rules">Positions of the rules that give it.</param>
internal sealed record Consequence(Weight Weight, int Index, int Topic, int Value, Conclusion? Conclusion, int[] Rules);
