using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Explanations;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Explaining.Changing;

/// <summary>How far a search goes.</summary>
/// <param name="Trials">Changed studies that are evaluated at most.</param>
/// <param name="Changes">Findings that are changed together at most.</param>
/// <param name="Ways">Where so many were found, larger sets are not looked for.</param>
internal sealed record SearchLimits(int Trials = 4_000, int Changes = 4, int Ways = 8);

/// <summary>
/// The sets of changes, smallest first, that bring a goal about. Every set is tried whole; one that contains another is
/// left out, so no change in a set that was found can be left out. A set of findings that could not do it with any
/// values at all is not tried value by value: with them unknown the goal is already out of reach.
/// </summary>
internal sealed class WaySearch
{
    private const int MoreOfCore = 2;

    private readonly Trials _trials;
    private readonly Goal _goal;
    private readonly SearchLimits _limits;
    private readonly ImmutableArray<FindingSlot> _slots;
    private readonly ImmutableArray<ImmutableArray<Cell>> _cells;
    private readonly ImmutableArray<bool> _isFree;
    private readonly ImmutableArray<ImmutableHashSet<int>> _musts;
    private readonly ImmutableArray<int> _core;
    private readonly Reach _reach;
    private readonly List<ImmutableArray<(FindingSlot Slot, Cell Cell)>> _found = [];
    private int _mostTrials;

    public WaySearch(Trials trials, Examination examination, Goal goal, SearchLimits limits)
    {
        (_trials, _goal, _limits, _mostTrials) = (trials, goal, limits, limits.Trials);
        _reach = new Reach(examination);
        goal.Reach(_reach, examination);
        var space = new ChangeSpace(examination, trials.Study, _reach);
        (_slots, _cells, _isFree) = (space.Slots, space.Cells, space.IsFree);
        var core = new Reach(examination);
        goal.Core(core, examination);
        _core = [.. core.Tests.Keys.Select(s => _slots.IndexOf(s)).Where(i => i >= 0)];
        _musts =
        [
            .. goal.Musts(examination, trials.Study).Select(m => m.Select(s => _slots.IndexOf(s)).Where(i => i >= 0).ToImmutableHashSet()),
        ];
    }

    public ImmutableArray<ImmutableArray<(FindingSlot Slot, Cell Cell)>> Found => [.. _found];

    public Search Run()
    {
        var all = Enumerable.Range(0, _slots.Length).ToList();
        var isHopeless = _isFree.All(f => f) && !MayReach(_trials.Study, all);
        var needed = isHopeless ? [] : Needed(all);
        var most = Math.Min(_limits.Changes, _slots.Length);
        var size = isHopeless ? _limits.Changes : 0;
        while (size < most && (size == 0 || _found.Count < _limits.Ways))
        {
            if (!TryAll(all, needed, size + 1)) break;
            size++;
        }
        var isOutOfTrials = size < most && _found.Count < _limits.Ways;
        var upTo = Math.Min(size, _slots.Length);
        var because = _reach.Gaps(upTo);
        if (!isOutOfTrials) return new Search(because.IsEmpty, upTo, _slots.Length, _trials.Count, because);
        because = because.Insert(0, $"the search ended after {_trials.Count} changed studies");
        if (_found.Count == 0 && TryCore(needed, size) is { } few)
            because = because.Insert(1, $"of larger sets only those of the {few} findings that bear on it most directly were tried");
        return new Search(false, upTo, _slots.Length, _trials.Count, because);
    }

    /// <summary>
    /// Where no way was found among all findings: larger sets of the few that matter most, every smaller set of which has been
    /// tried. How many they are; null where they are not to be told apart.
    /// </summary>
    private int? TryCore(ImmutableArray<int> needed, int size)
    {
        var few = _core.Concat(needed).Distinct().Order().ToList();
        if (few.Count == 0 || few.Count == _slots.Length) return null;
        _mostTrials += _limits.Trials / 2;
        while (_found.Count == 0 && ++size <= Math.Min(_limits.Changes + MoreOfCore, few.Count))
            if (!TryAll(few, needed, size))
                break;
        return few.Count;
    }

    /// <summary>Findings without a change of which nothing can be reached: each way has them all.</summary>
    private ImmutableArray<int> Needed(List<int> all)
    {
        if (!_isFree.All(f => f)) return [];
        return [.. all.Where(s => !MayReach(_trials.Study, [.. all.Where(o => o != s)]))];
    }

    /// <summary>False where the trials ran out.</summary>
    private bool TryAll(List<int> of, ImmutableArray<int> needed, int size)
    {
        if (needed.Length > size) return true;
        var rest = of.Except(needed).ToList();
        foreach (var more in Sets(rest, size - needed.Length, [.. _musts.Where(m => !m.Overlaps(needed))]))
            if (!Assign([.. needed.Concat(more).OrderBy(s => _isFree[s]).ThenBy(s => s)], 0, _trials.Study, []))
                return false;
        return true;
    }

    private bool Assign(ImmutableArray<int> set, int depth, Study study, ImmutableArray<(FindingSlot Slot, Cell Cell)> changes)
    {
        if (_trials.Count >= _mostTrials) return false;
        if (depth == set.Length)
        {
            if (_trials.Ask(study, _goal.Of) == Truth.True) _found.Add(changes);
            return true;
        }
        if (_isFree[set[depth]] && !MayReach(study, set[depth..])) return true;
        foreach (var cell in _cells[set[depth]])
        {
            var next = changes.Add((_slots[set[depth]], cell));
            if (_found.Exists(f => f.All(next.Contains))) continue;
            if (!Assign(set, depth + 1, StudyEdit.With(study, _slots[set[depth]], cell.Value), next)) return false;
        }
        return true;
    }

    private bool MayReach(Study study, IEnumerable<int> unknown)
    {
        foreach (var slot in unknown.Select(i => _slots[i]))
        {
            study = StudyEdit.With(study, slot, Unknown);
            if (slot.Subject.Structure is not null) study = StudyEdit.WithoutNormals(study, slot.IsEarlier, slot.Subject);
        }
        return _trials.Ask(study, _goal.Of) != Truth.False;
    }

    private static NotAssessableValue Unknown { get; } = new();

    /// <param name="musts">Of each of these, one must be in the set.</param>
    private static IEnumerable<ImmutableArray<int>> Sets(
        List<int> from, int size, ImmutableArray<ImmutableHashSet<int>> musts, int start = 0)
    {
        if (size == 0)
        {
            if (musts.IsEmpty) yield return [];
            yield break;
        }
        for (var i = start; i <= from.Count - size; i++)
        {
            if (size == 1 && !musts.All(m => m.Contains(from[i]))) continue;
            foreach (var rest in Sets(from, size - 1, [.. musts.Where(m => !m.Contains(from[i]))], i + 1))
                yield return [from[i], .. rest];
        }
    }
}
