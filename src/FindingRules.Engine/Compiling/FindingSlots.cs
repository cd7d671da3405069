using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Compiling;

/// <summary>
/// Gives each finding of a kind a place in an array. The findings of the kind that it is like come first, so a rule for
/// tendons finds thickness at the same place in every kind of tendon.
/// </summary>
internal sealed class FindingSlots
{
    private readonly Dictionary<Finding, int> _slots = [];
    private readonly Dictionary<Kind, int> _counts = [];

    public FindingSlots(Vocabulary vocabulary)
    {
        foreach (var kind in vocabulary.Kinds.Values) Count(kind);
        foreach (var fact in vocabulary.StudyFacts.Values) _slots[fact] = StudyCount++;
    }

    public int StudyCount { get; private set; }

    public int this[Finding finding] => _slots[finding];

    public int CountOf(Kind kind) => _counts[kind];

    private int Count(Kind kind)
    {
        if (_counts.TryGetValue(kind, out var known)) return known;
        var next = kind.Like is null ? 0 : Count(kind.Like);
        foreach (var (name, finding) in kind.Findings)
            if (kind.Like?.Findings.ContainsKey(name) != true)
                _slots[finding] = next++;
        return _counts[kind] = next;
    }
}
