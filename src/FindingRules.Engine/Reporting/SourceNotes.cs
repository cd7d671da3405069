using System.Collections.Immutable;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using Source = FindingRules.Model.Packs.Reference;

namespace FindingRules.Engine.Reporting;

/// <summary>Published sources as a reading shows them, each once.</summary>
internal static class SourceNotes
{
    private static readonly Comparer<Source> ByName = Comparer<Source>.Create(static (a, b) => string.CompareOrdinal(a.Name, b.Name));

    /// <param name="more">Those of a step besides.</param>
    public static ImmutableArray<SourceNote> Of(List<RuleAt> rules, ImmutableArray<Source> more)
    {
        var words = rules[0].Examination.Network.Words;
        var sources = new List<Source>();
        foreach (var rule in rules) sources.AddRange(rule.Rule.Sources);
        sources.AddRange(more);
        sources.Sort(ByName);
        var notes = ImmutableArray.CreateBuilder<SourceNote>(sources.Count);
        for (var i = 0; i < sources.Count; i++)
            if (i == 0 || sources[i].Name != sources[i - 1].Name)
                notes.Add(words.Of(sources[i]));
        return notes.DrainToImmutable();
    }

    public static ImmutableArray<SourceNote> Of(IEnumerable<Source> references) =>
        [.. references.DistinctBy(r => r.Name).OrderBy(r => r.Name, StringComparer.Ordinal).Select(Note)];

    public static SourceNote Note(Source source) => new(source.Facts, source.Cites, StatusWord(source.Status), source.Choice);

    private static string StatusWord(SourceStatus status) => status switch
    {
        SourceStatus.AbstractRead => "abstract read",
        SourceStatus.Secondary => "secondary source read",
        SourceStatus.Computed => "computed from published figures",
        _ => "common practice, no source",
    };
}
