using System.Collections.Immutable;
using FindingRules.Model.Explanations;

namespace FindingRules.Explaining;

/// <summary>Changes that would do something, with what the reading would then say.</summary>
/// <param name="owner">The title of the subject that is asked about, which need not be said with each finding.</param>
internal sealed class ChangeText(Outline page, string owner)
{
    /// <summary>Said once where changes are told.</summary>
    public const string Limits =
        "Tried were other values of findings and facts, now and in the earlier study, on the whole study. Another lesion, another side or "
        + "protocol, and the words that report a structure as normal or not assessable were not tried.";

    private const int FewLines = 3;
    private const int FewSets = 4;

    public void Write(ImmutableArray<Way> ways, int depth)
    {
        var groups = new List<ImmutableArray<Way>>();
        foreach (var alike in ways.GroupBy(w => string.Join('\n', w.Changes.Select(c => $"{c.Subject}|{c.Finding}"))))
            foreach (var group in Merged([.. alike])) groups.Add(group);
        foreach (var group in groups.Take(FewSets)) Together(group, depth);
        if (groups.Count > FewSets) page.Line(depth, $"- and {groups.Count - FewSets} more (`--output json` lists them)");
    }

    /// <summary>Ways that differ in the values of one finding only are one line.</summary>
    private static IEnumerable<ImmutableArray<Way>> Merged(ImmutableArray<Way> ways)
    {
        var differing = Enumerable.Range(0, ways[0].Changes.Length).Count(i => ways.Select(w => w.Changes[i].Range).Distinct().Count() > 1);
        return differing <= 1 ? [ways] : ways.Select(w => ImmutableArray.Create(w));
    }

    private void Together(ImmutableArray<Way> alike, int depth)
    {
        var changes = alike[0].Changes.Select((c, i) =>
            $"{Title(c)}: {string.Join("; or ", alike.Select(w => Range(w.Changes[i])).Distinct())} ({Now(c)})");
        page.Line(depth, $"- {string.Join(", and ", changes)}");
        Then(alike[0], depth + 1);
    }

    public void Searched(Search search, bool hasWays, int depth)
    {
        if (search.Findings == 0) return;
        page.Line(depth, search.IsComplete
            ? $"Tried: {Sets(search)}.{(hasWays ? " Nothing else of that size does it." : "")}"
            : $"Tried to the end: {Sets(search)}. Incomplete, so there may be other ways: {string.Join("; ", search.Because)}.");
    }

    public static string None(Search search, string what) => search.IsComplete
        ? $"No change of up to {Findings(search.UpTo)} {what}."
        : $"No change {what} was found.";

    /// <summary>What is known of it now.</summary>
    public static string Now(Change change) => change.Origin switch
    {
        "normal" => $"now {change.Was}, taken as normal",
        "sent" => $"now {change.Was}",
        "not-assessable" => "now not assessable",
        _ => "not sent now",
    };

    public static string Range(Change change)
    {
        var isSame = change.Range == change.To.Replace('-', ' ') || change.Range == $"exactly {change.To}";
        return isSame ? change.Range : $"{change.Range}, such as {change.To.Replace('-', ' ')}";
    }

    public static string Lines(int count) => count == 1 ? "one line" : $"{count} lines";

    public string Title(Change change) =>
        change.Title + (change.SubjectTitle == owner || change.Subject == "study" ? "" : $" of the {change.SubjectTitle}");

    private void Then(Way way, int depth)
    {
        foreach (var said in way.Said.Take(FewLines)) page.Line(depth, $"It would say: {said}");
        var (more, gone) = (way.Said.Length - FewLines, way.Gone.Length);
        if (more > 0) page.Line(depth, $"It would say {Lines(more)} more.");
        if (gone == 1) page.Line(depth, $"It would not say any more: {way.Gone[0]}");
        else if (gone > 1) page.Line(depth, $"It would not say {Lines(gone)} of now any more.");
    }

    private static string Sets(Search search) => (search.UpTo, search.Findings) switch
    {
        (_, 1) => "the one finding that could matter",
        (0, _) => "no set of findings",
        (1, var all) => $"each of the {all} findings that could matter, by itself",
        var (most, all) when most == all => $"the {all} findings that could matter, in every combination",
        var (most, all) => $"every set of up to {Findings(most)} of the {all} that could matter",
    };

    private static string Findings(int count) => count == 1 ? "one finding" : $"{count} findings";
}
