using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Asking;

/// <summary>
/// Supposes an answer in an examination that has been decided, decides again what it can touch, and takes it all back.
/// Rules and topics are decided by the same code as ever; what is spared is looking at the others.
/// </summary>
internal sealed class Hypothesis
{
    private readonly Examination _examination;
    private readonly PlanReaders?[] _readers;
    private readonly PriorityQueue<(int Index, int Position), int> _open = new();
    private readonly HashSet<(int, int)> _isOpen = [];
    private readonly List<(int Index, int Slot, FindingValue? Before)> _values = [];
    private readonly List<(int Index, int Position, RuleState Before)> _rules = [];
    private readonly List<(int Index, int Topic, TopicMarks Before)> _topics = [];
    private readonly HashSet<(int Index, int Topic)> _stale = [];

    public Hypothesis(Examination examination, AskTables tables)
    {
        _examination = examination;
        _readers = new PlanReaders?[examination.Count];
        for (var i = 0; i < _readers.Length; i++)
        {
            // Where every rule is false, no answer makes another of one, save of a rule that asks what was assessed.
            if (!examination[i].IsPresent) continue;
            var readers = tables.ReadersOf(examination[i].Plan);
            if (examination[i].LiveCount > 0 || readers.AsksAnything) _readers[i] = readers;
        }
    }

    /// <summary>Rules that came out differently; one may be named twice.</summary>
    public List<(int Index, int Position, RuleState Before)> Rules => _rules;

    /// <summary>Topics that came out differently; one may be named twice.</summary>
    public List<(int Index, int Topic, TopicMarks Before)> Topics => _topics;

    public void Suppose(int index, Finding finding, FindingValue value)
    {
        _examination.Memo.Forget();
        Place(index, _examination.Network.Slots[finding], value);
        OpenReaders(index, finding);
        while (_open.TryDequeue(out var next, out var layer))
        {
            _isOpen.Remove(next);
            DecideRule(next.Index, next.Position);
            if (!_open.TryPeek(out _, out var following) || following > layer) DecideTopics();
        }
    }

    public void TakeBack()
    {
        for (var i = _values.Count - 1; i >= 0; i--) _examination[_values[i].Index].Values[_values[i].Slot] = _values[i].Before;
        for (var i = _rules.Count - 1; i >= 0; i--) _examination[_rules[i].Index].Exchange(_rules[i].Position, _rules[i].Before);
        for (var i = _topics.Count - 1; i >= 0; i--) _examination[_topics[i].Index].Exchange(_topics[i].Topic, _topics[i].Before);
        _values.Clear();
        _rules.Clear();
        _topics.Clear();
        _examination.Memo.Forget();
    }

    /// <summary>A lesion has what its structure has, where nothing was sent of itself.</summary>
    private void Place(int index, int slot, FindingValue value)
    {
        for (var i = index; i <= index + _examination[index].LesionCount; i++)
        {
            if (i > index && _examination[i].Values[slot] is not null) continue;
            _values.Add((i, slot, _examination[i].Values[slot]));
            _examination[i].Values[slot] = value;
        }
    }

    private void OpenReaders(int index, Finding finding)
    {
        var (whole, last) = SameStructure(index);
        for (var i = 0; i < _readers.Length; i++)
        {
            if (_readers[i] is not { } readers) continue;
            if (Sees(i, index, whole, last)) OpenUnsettled(i, readers, readers.Own(finding));
            if (whole <= i && i <= last) OpenUnsettled(i, readers, readers.OfAnything);
            OpenUnsettled(i, readers, readers.Elsewhere(finding));
            OpenUnsettled(i, readers, readers.OfAnythingElsewhere);
        }
    }

    /// <summary>A structure and its lesions see what is its own; what is a lesion's, no other lesion sees.</summary>
    private static bool Sees(int looking, int index, int whole, int last) =>
        looking == index || looking == whole || (index == whole && whole < looking && looking <= last);

    /// <summary>A structure and its lesions, and of a lesion its structure: the first and the last of them.</summary>
    private (int First, int Last) SameStructure(int index)
    {
        var whole = _examination[index].IsLesion ? _examination[index].Whole : index;
        return (whole, whole + _examination[whole].LesionCount);
    }

    private void OpenUnsettled(int index, PlanReaders readers, int[] positions)
    {
        foreach (var position in positions)
            if (!IsSettled(_examination[index].StateOf(position), readers, position))
                Open(index, position);
    }

    private void Open(int index, int position)
    {
        var instance = _examination[index];
        if (instance.Takes(instance.Plan.Rules[position].Rule.IsPerStructure) && _isOpen.Add((index, position)))
            _open.Enqueue((index, position), instance.Plan.Rules[position].Layer);
    }

    /// <summary>More knowledge never turns round what is settled, save where a rule asks what was assessed.</summary>
    private static bool IsSettled(RuleState state, PlanReaders readers, int position) =>
        state.Truth != Truth.Unknown && !readers.AsksWhatIsKnown[position];

    private void DecideRule(int index, int position)
    {
        var instance = _examination[index];
        var entry = instance.Plan.Rules[position];
        var before = instance.StateOf(position);
        var truth = IsSettled(before, _readers[index]!, position)
            ? before.Truth
            : LayeredDecision.Ask(_examination, index, entry, isWidened: false);
        var standing = truth == Truth.False ? Standing.False : LayeredDecision.StandingOf(instance, entry, truth);
        if (before.Truth == truth && before.Standing == standing) return;
        _rules.Add((index, position, before));
        instance.Exchange(position, before with { IsDecided = true, Truth = truth, Standing = standing });
        if (before.Truth != truth)
            foreach (var inferior in _readers[index]!.Inferiors[position])
                Open(index, inferior);
        foreach (var answer in instance.Plan.Own.Answers[position]) _stale.Add((index, answer.Topic));
    }

    private void DecideTopics()
    {
        foreach (var (index, position) in _stale)
        {
            var instance = _examination[index];
            var entry = instance.Plan.Topics[position];
            var marks = MarksOf(instance, entry);
            var before = instance.Exchange(position, marks);
            if (before.State.Equals(marks.State)) instance.Exchange(position, before);
            else Changed(index, position, before, entry.Topic);
        }
        _stale.Clear();
    }

    private void Changed(int index, int position, TopicMarks before, Topic topic)
    {
        _topics.Add((index, position, before));
        var (whole, last) = SameStructure(index);
        for (var i = 0; i < _readers.Length; i++)
        {
            if (_readers[i] is not { } readers) continue;
            if (Sees(i, index, whole, last)) OpenUnsettled(i, readers, readers.Own(topic));
            OpenUnsettled(i, readers, readers.Elsewhere(topic));
        }
    }

    private static TopicMarks MarksOf(Instance instance, TopicEntry entry)
    {
        var marks = default(TopicMarks);
        foreach (var (rule, value) in entry.Givers) Mark(ref marks, 1UL << value, instance.StateOf(rule).Standing);
        foreach (var rule in entry.Holders) Mark(ref marks, 0, instance.StateOf(rule).Standing);
        return marks;
    }

    private static void Mark(ref TopicMarks marks, ulong value, Standing standing)
    {
        if (standing is not (Standing.False or Standing.Yields)) marks.Add(value, standing);
    }
}
