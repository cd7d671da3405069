using System.Collections.Immutable;
using System.Runtime.InteropServices;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Explaining.Changing;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Asking;

/// <summary>Weighs missing findings of a decided examination by supposing each of their answers in turn.</summary>
internal sealed class Questioner
{
    private readonly Examination _examination;
    private readonly AskTables _tables;
    private readonly OpenConsequences _open;
    private readonly Hypothesis _hypothesis;
    private readonly HashSet<int> _touched = [];
    private readonly List<(Consequence Consequence, Truth State)> _settled = [];
    private readonly Decided _decided;

    public Questioner(Decided decided)
    {
        (_decided, _examination, _tables) = (decided, decided.Examination, decided.Examination.Network.Asking);
        _open = new OpenConsequences(_examination, _tables);
        _hypothesis = new Hypothesis(_examination, _tables);
    }

    public ImmutableArray<Cell> AnswersOf(int index, Finding finding) =>
        _tables.AnswersOf(
            finding, _examination.ValueAt(index, _examination.Network.Slots[finding]), _decided.IsSentAsNormal(index));

    public Worth WorthOf(int index, Finding finding)
    {
        var answers = AnswersOf(index, finding);
        var settled = new int[Weights.Count];
        foreach (var answer in answers)
        {
            _settled.Clear();
            Settle(index, finding, answer);
            foreach (var (consequence, _) in _settled) settled[(int)consequence.Weight]++;
        }
        return new Worth(ImmutableCollectionsMarshal.AsImmutableArray(settled), answers.Length);
    }

    /// <summary>The open consequences that the answer settles: true for those that would then be said.</summary>
    public ImmutableArray<(Consequence Consequence, Truth State)> Settled(int index, Finding finding, Cell answer)
    {
        _settled.Clear();
        Settle(index, finding, answer);
        return [.. _settled];
    }

    private void Settle(int index, Finding finding, Cell answer)
    {
        _hypothesis.Suppose(index, finding, answer.Value!);
        _touched.Clear();
        foreach (var rule in _hypothesis.Rules) _touched.Add(rule.Index);
        foreach (var topic in _hypothesis.Topics) _touched.Add(topic.Index);
        foreach (var touched in _touched)
            foreach (var consequence in _open.At(touched))
                if (_open.StateOf(consequence) is var state and not Truth.Unknown)
                    _settled.Add((consequence, state));
        _hypothesis.TakeBack();
    }
}
