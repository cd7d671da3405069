using System.Collections.Immutable;
using FindingRules.Model.Explanations;

namespace FindingRules.Explaining;

/// <summary>What would have to be different, and what would come of it.</summary>
/// <param name="asked">The line of the reading that is asked about, as it stands there.</param>
internal sealed class ChangeText(Outline page, Explanation explanation, string? asked = null)
{
    private const int FewLines = 3;

    public void Write(WhyNot whyNot, int depth)
    {
        if (whyNot.Stands)
        {
            page.Line(depth, "It does apply, and its answer is given: nothing keeps it back.");
            return;
        }
        Obstacle(whyNot, depth);
        if (whyNot.Ways.IsEmpty) page.Line(depth, None(whyNot.Search, "would make it apply"));
        else page.Line(depth, $"It would apply, and its answer would be given, with {Each(whyNot.Ways)}:");
        Ways(whyNot.Ways, depth + 1);
        Searched(whyNot.Search, whyNot.Ways, depth);
    }

    public void Write(WhatIf whatIf, int depth)
    {
        if (whatIf.Ways.IsEmpty) page.Line(depth, None(whatIf.Search, "would take it back"));
        else page.Line(depth, $"It would not be said, or not so, with {Each(whatIf.Ways)}:");
        Ways(whatIf.Ways, depth + 1);
        Searched(whatIf.Search, whatIf.Ways, depth);
        foreach (var margin in whatIf.Margins.GroupBy(m => (m.Value, m.Threshold, m.Distance)).Select(g => g.First()))
            page.Line(depth, Near(margin));
        if (!whatIf.Margins.IsEmpty)
            page.Line(depth, whatIf.SurvivesPrecision
                ? "It stays as it is with the measurements a little off."
                : "With the measurements a little off it could be otherwise: it is borderline.");
    }

    private void Obstacle(WhyNot whyNot, int depth)
    {
        if (whyNot.Obstacle is not { } obstacle) return;
        string[] ids = [.. obstacle.Rules.Select(r => r.Rule).Distinct()];
        var rules = string.Join(" and ", ids);
        var (goes, isTrue) = ids.Length > 1 ? ("go", "are") : ("goes", "is");
        var topic = obstacle.Topic is { } key ? explanation.Find(key)?.Title ?? key.Topic : "the topic";
        page.Line(depth, obstacle.Sort switch
        {
            "false-part" => "It does not apply. What is in the way first:",
            "unknown-part" => "It is undecided. What is missing first:",
            "superior" => $"Its condition does not count, because {rules} {goes} before it and {isTrue} true.",
            "unknown-superior" => $"It is true, but {rules} {goes} before it and {isTrue} not decided yet.",
            "held" => $"It is true, but {topic} is withheld by {rules}.",
            "unknown-hold" => $"It is true, but {rules} may still withhold {topic}.",
            "conflict" => $"It is true, but {rules} {isTrue} true as well, with another answer for {topic}, so no answer is given.",
            _ => $"It is true, but {rules} may still answer {topic} otherwise.",
        });
        if (obstacle.Part is { } part)
            new PartText(page, explanation, explanation.Find(whyNot.Key)?.SubjectTitle ?? "").Write(part, depth + 1);
    }

    private void Ways(ImmutableArray<Way> ways, int depth)
    {
        foreach (var way in ways)
        {
            page.Line(depth, $"- {string.Join(", and ", way.Changes.Select(Of))}");
            foreach (var said in way.Said.Take(FewLines)) page.Line(depth + 1, $"Then it says: {said}");
            if (way.Said.Length > FewLines) page.Line(depth + 1, $"and {Lines(way.Said.Length - FewLines)} more.");
            Gone([.. way.Gone.Where(g => g != asked)], depth + 1);
        }
    }

    private void Gone(ImmutableArray<string> gone, int depth)
    {
        if (gone.Length == 1) page.Line(depth, $"It no longer says: {gone[0]}");
        else if (gone.Length > 1) page.Line(depth, $"{Lines(gone.Length)} that it says now {(asked is null ? "" : "as well ")}would go.");
    }

    private static string Lines(int count) => count == 1 ? "one line" : $"{count} lines";

    private static string Of(Change change)
    {
        var whose = change.Subject == "study" ? "" : $" of the {change.SubjectTitle}";
        var now = change.Origin switch
        {
            "normal" => $"now {change.Was}, taken as normal",
            "sent" => $"now {change.Was}",
            "not-assessable" => "now not assessable",
            _ => "not sent now",
        };
        var such = change.To.Replace('-', ' ') == change.Range || change.Range == $"exactly {change.To}" ? "" : $", such as {change.To}";
        return $"{change.Title}{whose}: {change.Range}{such} ({now})";
    }

    private static string Each(ImmutableArray<Way> ways) => (ways.Length, ways.Max(w => w.Changes.Length)) switch
    {
        (1, 1) => "this change",
        (1, _) => "these changes together",
        (_, 1) => "each of these changes alone",
        _ => "any one of these, all in a line together",
    };

    private static string None(Search search, string what) => search.IsComplete
        ? $"No change of up to {Findings(search.UpTo)} {what}."
        : $"No change {what} was found.";

    private void Searched(Search search, ImmutableArray<Way> ways, int depth)
    {
        if (search.Findings == 0) return;
        page.Line(depth, search.IsComplete
            ? $"Tried: {Sets(search)}. {(ways.IsEmpty ? "" : "Nothing else of that size does it.")}"
            : $"Incomplete, so there may be other ways: {string.Join("; ", search.Because)}. Tried: {Sets(search)}.");
    }

    private static string Sets(Search search) => (search.UpTo, search.Findings) switch
    {
        (_, 1) => "the one finding that could matter",
        (0, _) => "no set of findings to the end",
        (1, var all) => $"each of the {all} findings that could matter by itself",
        var (most, all) when most == all => $"the {all} findings that could matter, in every combination",
        var (most, all) => $"every set of up to {Findings(most)} of the {all} that could matter",
    };

    private static string Near(Margin margin)
    {
        if (margin.Distance is not { } distance) return $"It rests on {margin.Value} against {margin.Threshold}.";
        var within = margin.IsWithinPrecision ? ", within the precision of measurement" : "";
        var precision = margin.Precision is { } p ? $" (measured to {p})" : "";
        return $"It rests on {margin.Value}, {distance} from {margin.Threshold}{within}{precision}.";
    }

    private static string Findings(int count) => count == 1 ? "one finding" : $"{count} findings";
}
