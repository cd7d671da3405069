using System.Collections.Immutable;
using FindingRules.Model.Explanations;

namespace FindingRules.Explaining;

/// <summary>
/// What would take back each line of a reading: finding by finding, and what was told of one line is not told again of the
/// lines that rest on it.
/// </summary>
internal sealed class WhatIfText(Outline page, Explanation explanation)
{
    private const int FewValues = 6;

    /// <summary>The ways told so far, each with the line it was told of.</summary>
    private readonly Dictionary<string, string> _told = new(StringComparer.Ordinal);

    public void Write(WhatIf whatIf, int depth)
    {
        var changes = new ChangeText(page, Owner(whatIf));
        if (whatIf.Ways.IsEmpty) page.Line(depth, ChangeText.None(whatIf.Search, $"would {Undo(whatIf)}"));
        var again = whatIf.Ways.Where(w => _told.ContainsKey(KeyOf(w))).ToList();
        var fresh = whatIf.Ways.Except(again).ToImmutableArray();
        var alone = fresh.Where(w => w.Changes.Length == 1).ToList();
        var together = fresh.Except(alone).ToImmutableArray();
        if (alone.Count > 0 || (again.Count > 0 && together.IsEmpty)) page.Line(depth, $"One finding otherwise would {Undo(whatIf)}:");
        foreach (var finding in alone.GroupBy(w => (w.Changes[0].Subject, w.Changes[0].Finding)))
            Write(changes, [.. finding], whatIf, depth + 1);
        if (!together.IsEmpty) page.Line(depth, $"These together would {Undo(whatIf)}, a line each:");
        changes.Write(together, depth + 1);
        Again(changes, again, depth);
        changes.Searched(whatIf.Search, !whatIf.Ways.IsEmpty, depth);
        Margins(whatIf, depth);
        foreach (var way in fresh) _told.TryAdd(KeyOf(way), whatIf.Line.Text);
    }

    private void Write(ChangeText changes, ImmutableArray<Way> ways, WhatIf whatIf, int depth)
    {
        var first = ways[0].Changes[0];
        page.Line(depth, $"{changes.Title(first)} ({ChangeText.Now(first)}):");
        foreach (var like in ways.GroupBy(w => Instead(w, whatIf.Line)).Take(FewValues))
            page.Line(depth + 1, $"{string.Join("; ", like.Select(w => ChangeText.Range(w.Changes[0])))}: {like.Key}");
        var more = ways.GroupBy(w => Instead(w, whatIf.Line)).Skip(FewValues).Sum(g => g.Count());
        if (more > 0) page.Line(depth + 1, more == 1 ? "and one value more" : $"and {more} values more");
    }

    private void Again(ChangeText changes, List<Way> again, int depth)
    {
        foreach (var told in again.GroupBy(w => _told[KeyOf(w)]))
        {
            var findings = told.SelectMany(w => w.Changes).Select(changes.Title).Distinct();
            page.Line(depth + 1, $"as above, under “{told.Key.TrimEnd('.')}”: {string.Join(", ", findings)}");
        }
    }

    /// <summary>What would stand in its place: of an impression, what is said of its topic before steps and cautions.</summary>
    private static string Instead(Way way, ExplainedLine line)
    {
        if (way.Said.IsEmpty) return "nothing instead";
        var best = way.Said.OrderBy(said => line.Sort == "suggestion" && IsAside(said))
            .ThenByDescending(said => Alike(said, line.Text)).First();
        return way.Said.Length == 1 ? best : $"{best} And {ChangeText.Lines(way.Said.Length - 1)} more.";
    }

    private static bool IsAside(string said) => said.StartsWith("Next: ", StringComparison.Ordinal)
        || said.StartsWith("Done: ", StringComparison.Ordinal) || said.StartsWith("Caution: ", StringComparison.Ordinal);

    /// <summary>How far two lines begin with the same words: another answer of the same topic mostly does.</summary>
    private static int Alike(string said, string line) => said.Zip(line).TakeWhile(p => p.First == p.Second).Count();

    private void Margins(WhatIf whatIf, int depth)
    {
        foreach (var value in whatIf.Margins.GroupBy(m => m.Value))
        {
            var thresholds = value.Select(Near).Distinct();
            var precision = value.First().Precision is { } p ? $" (measured to {p})" : "";
            page.Line(depth, $"It rests on {value.Key}: {string.Join(", ", thresholds)}{precision}.");
        }
        if (!whatIf.Margins.IsEmpty)
            page.Line(depth, whatIf.SurvivesPrecision
                ? "It stays as it is with the measurements a little off."
                : "With the measurements a little off it could be otherwise: it is borderline.");
    }

    private static string Near(Margin margin)
    {
        if (margin.Distance is not { } distance) return $"against {margin.Threshold}";
        return $"{distance} from {margin.Threshold}{(margin.IsWithinPrecision ? ", within the precision of measurement" : "")}";
    }

    private static string Undo(WhatIf whatIf) => whatIf.Line.Sort switch
    {
        "held" => "end the withholding",
        "conflict" => "end the contradiction",
        "suggestion" => "take it back or change it",
        _ => "take it back",
    };

    private string Owner(WhatIf whatIf) => whatIf.Line.By.Select(explanation.Find).OfType<Proof>().FirstOrDefault()?.SubjectTitle ?? "";

    private static string KeyOf(Way way) => string.Join('\n', way.Changes.Select(c => $"{c.Subject}|{c.Finding}|{c.Range}"));
}
