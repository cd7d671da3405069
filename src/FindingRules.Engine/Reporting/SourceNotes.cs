using System.Collections.Immutable;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using Source = FindingRules.Model.Packs.Reference;

namespace FindingRules.Engine.Reporting;

/// <summary>Published sources as a reading shows them, each once.</summary>
internal static class SourceNotes
{
    public static ImmutableArray<SourceNote> Of(IEnumerable<Source> references) =>
    [
        .. references.DistinctBy(r => r.Name).OrderBy(r => r.Name, StringComparer.Ordinal).Select(r =>
            new SourceNote(r.Facts, r.Cites, StatusWord(r.Status), r.Choice)),
    ];

    private static string StatusWord(SourceStatus status) => status switch
    {
        SourceStatus.AbstractRead => "abstract read",
        SourceStatus.Secondary => "secondary source read",
        SourceStatus.Computed => "computed from published figures",
        _ => "common practice, no source",
    };
}
