using System.Collections.Immutable;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Normalising;

/// <summary>The order in which the parts of a study are laid out, whatever the order in which they were sent.</summary>
internal sealed class CanonicalOrder
{
    private int[] _subjects = [];
    private int[] _lesions = [];

    public ReadOnlySpan<int> Of(ImmutableArray<StudySubject> subjects) => Sort(subjects, ref _subjects, BySubject);

    public ReadOnlySpan<int> Of(ImmutableArray<Lesion> lesions) => Sort(lesions, ref _lesions, ById);

    private static int BySubject(StudySubject a, StudySubject b)
    {
        var byStructure = ReferenceEquals(a.Structure, b.Structure) ? 0 : string.CompareOrdinal(a.Structure.Name, b.Structure.Name);
        return byStructure != 0 ? byStructure : a.Side - b.Side;
    }

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
