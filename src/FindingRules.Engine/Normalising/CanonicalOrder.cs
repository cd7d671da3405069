using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Normalising;

/// <summary>The order in which the parts of a study are laid out, whatever the order in which they were sent.</summary>
internal sealed class CanonicalOrder
{
    private PlannedSubject[] _subjects = [];
    private int[] _lesions = [];

    /// <summary>By structure and side.</summary>
    public ReadOnlySpan<PlannedSubject> Of(ImmutableArray<StudySubject> subjects, RuleNetwork network)
    {
        if (_subjects.Length < subjects.Length) _subjects = new PlannedSubject[subjects.Length];
        var room = _subjects;
        for (var i = 0; i < subjects.Length; i++)
        {
            // The studies of a department are much alike: mostly the one before had the same structure at the same place.
            var structure = subjects[i].Structure;
            var plan = room[i].Plan is { } before && ReferenceEquals(before.Structure, structure) ? before : network.PlanOf(structure);
            // Plans are numbered in order of name.
            var next = new PlannedSubject(plan, Examination.SiteKey(plan, subjects[i].Side), i);
            var at = i;
            for (; at > 0 && room[at - 1].Order > next.Order; at--) room[at] = room[at - 1];
            room[at] = next;
        }
        return room.AsSpan(0, subjects.Length);
    }

    public ReadOnlySpan<int> Of(ImmutableArray<Lesion> lesions) => Sort(lesions, ref _lesions, ById);

    private static int ById(Lesion a, Lesion b) => string.CompareOrdinal(a.Id, b.Id);

    // They are few, and mostly in order already: each is pushed to its place.
    private static ReadOnlySpan<int> Sort<T>(ImmutableArray<T> items, ref int[] room, Comparison<T> compare)
    {
        if (room.Length < items.Length) room = new int[items.Length];
        for (var i = 0; i < items.Length; i++)
        {
            var at = i;
            for (; at > 0 && compare(items[room[at - 1]], items[i]) > 0; at--) room[at] = room[at - 1];
            room[at] = i;
        }
        return room.AsSpan(0, items.Length);
    }
}

/// <param name="Index">Among the subjects as they were sent.</param>
internal readonly record struct PlannedSubject(StructurePlan Plan, int Order, int Index);
