using System.Collections.Immutable;

namespace FindingRules.Model.Vocabularies;

/// <summary>The structures, findings, axes and study facts that rules may speak of, each by name.</summary>
public sealed record Vocabulary(
    ImmutableSortedDictionary<string, Axis> Axes,
    ImmutableSortedDictionary<string, Kind> Kinds,
    ImmutableSortedDictionary<string, Structure> Structures,
    ImmutableSortedDictionary<string, Finding> StudyFacts)
{
    public static Vocabulary Empty { get; } = new(
        ImmutableSortedDictionary.Create<string, Axis>(StringComparer.Ordinal),
        ImmutableSortedDictionary.Create<string, Kind>(StringComparer.Ordinal),
        ImmutableSortedDictionary.Create<string, Structure>(StringComparer.Ordinal),
        ImmutableSortedDictionary.Create<string, Finding>(StringComparer.Ordinal));

    public ImmutableArray<Structure> StructuresOf(Kind kind) => [.. Structures.Values.Where(s => s.Kind.IsA(kind))];
}

/// <summary>What a rule, a topic or a scale speaks of: the study as a whole, or each of some structures.</summary>
/// <param name="Written">As the file says it: <c>study</c>, <c>each cuff-tendon</c>.</param>
/// <param name="Kind">The kind named, or the kind of the one structure named; null for the study.</param>
/// <param name="Structures">In order of name; empty for the study.</param>
public sealed record Scope(string Written, Kind? Kind, ImmutableArray<Structure> Structures)
{
    public static Scope Study { get; } = new("study", null, []);

    public bool IsStudy => Kind is null;

    public bool Covers(Structure? structure) => structure is null ? IsStudy : Structures.Contains(structure);

    public bool Overlaps(Scope other) => IsStudy ? other.IsStudy : Structures.Any(other.Structures.Contains);

    /// <summary>A finding that every structure of the scope has; for the study one of its facts.</summary>
    public Finding? Find(Vocabulary vocabulary, string finding) =>
        (Kind?.Findings ?? vocabulary.StudyFacts).GetValueOrDefault(finding);
}
