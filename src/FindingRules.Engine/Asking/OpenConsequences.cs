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
    private static readonly List<Consequence> _none = [];

    private readonly Examination _examination;
    private readonly List<Consequence>?[] _byInstance;
    private readonly List<int> _numbers = [];

    public OpenConsequences(Examination examination, AskTables tables)
    {
        _examination = examination;
        _byInstance = new List<Consequence>?[examination.Count];
        for (var i = 0; i < _byInstance.Length; i++)
        {
            // Where every rule is false nothing is open.
            if (!examination[i].IsPresent || examination[i].LiveCount == 0) continue;
            var consequences = _byInstance[i] = [];
            AddTopics(consequences, i);
            AddOthers(consequences, i, tables);
        }
    }

    public List<Consequence> At(int index) => _byInstance[index] ?? _none;

    public Truth StateOf(Consequence consequence)
    {
        var instance = _examination[consequence.Index];
        if (consequence.Conclusion is null) return Emission.Of(instance.TopicAt(consequence.Topic), 1UL << consequence.Value);
        var state = Truth.False;
        foreach (var rule in consequence.Rules) state = Kleene.Or(state, StateOf(instance, rule, consequence.Conclusion));
        return state;
    }

    private void AddTopics(List<Consequence> to, int index)
    {
        var instance = _examination[index];
        int[] marked = [.. instance.Marked];
        Array.Sort(marked);
        foreach (var t in marked)
        {
            if (instance.TopicAt(t) is not { IsDecided: true, Status: TopicStatus.Open } state) continue;
            var values = instance.Plan.Topics[t].Topic.Values;
            for (var v = 0; v < values.Length; v++)
                if ((state.Possible & (1UL << v)) != 0 && values[v].Says is not null)
                    to.Add(new Consequence(Weights.Of(values[v].Certainty), index, t, v, null, []));
        }
    }

    private void AddOthers(List<Consequence> to, int index, AskTables tables)
    {
        var known = tables.ConsequencesOf(_examination[index].Plan);
        _numbers.Clear();
        foreach (var rule in _examination[index].Live) _numbers.AddRange(known.OfRule[rule]);
        _numbers.Sort();
        for (var i = 0; i < _numbers.Count; i++)
        {
            if (i > 0 && _numbers[i] == _numbers[i - 1]) continue;
            var (conclusion, weight, rules) = known.All[_numbers[i]];
            var consequence = new Consequence(weight, index, -1, -1, conclusion, rules);
            if (StateOf(consequence) == Truth.Unknown && !IsDone(conclusion, index)) to.Add(consequence);
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
