using System.Collections.Immutable;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Explaining;

/// <summary>
/// Subjects by what people call them: by key or by title, capitals aside; a structure with lesions stands for all of them, and a
/// structure without its side for each side that there is.
/// </summary>
internal static class SubjectName
{
    public static ImmutableArray<Subject> Find(string name, ImmutableArray<Subject> among)
    {
        Func<Subject, bool>[] tries =
        [
            s => Is(name, s.Key) || Is(name, s.Title),
            s => Is(name, s.Whole.Key) || Is(name, s.Whole.Title),
            s => s.Structure is { } structure && (Is(name, structure.Name) || Is(name, structure.Title)),
        ];
        return tries.Select(t => among.Where(t).ToImmutableArray()).FirstOrDefault(found => !found.IsEmpty, []);
    }

    /// <summary>Whether some study could have it.</summary>
    public static bool IsKnown(string name, Vocabulary vocabulary)
    {
        var whole = name.Split(" lesion ")[0].Split(" (lesion")[0];
        Side[] SidesOf(Structure s) => s.IsPaired ? [Side.Left, Side.Right, Side.Unknown] : [Side.None];
        var all = vocabulary.Structures.Values.SelectMany(s => SidesOf(s).Select(side => new Subject(s, side, null)))
            .Prepend(Subject.Study).ToImmutableArray();
        return !Find(whole, all).IsEmpty;
    }

    private static bool Is(string name, string other) => string.Equals(name, other, StringComparison.OrdinalIgnoreCase);
}
