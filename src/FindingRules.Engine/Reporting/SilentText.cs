using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Reporting;

/// <summary>
/// Why there is nothing to say, where there is not: that no rule applies is said only where none does and none is undecided.
/// </summary>
internal sealed class SilentText(Decided decided, Reading reading)
{
    private const int MostAsked = 5;

    public IEnumerable<string> Lines()
    {
        var lines = Done().Concat(Unworded()).ToList();
        var yet = lines.Count > 0 ? "more yet" : "yet";
        if (Undecided() is { } lack) return [.. lines, $"Undecided: what was found settles nothing {yet}.{lack}"];
        if (lines.Count == 0 && reading.Notes.IsEmpty) lines.Add("No rule of this pack applies to what was sent.");
        if (lines.Count > 0 && !decided.HasProtocol) lines[^1] += " No protocol was named, so completeness was not checked.";
        return lines;
    }

    private IEnumerable<string> Done() =>
        from step in reading.NextSteps
        where step.IsDone
        let found = step.Found.IsEmpty ? "" : $" Found: {string.Join("; ", step.Found)}."
        select $"Done already: {step.Text}{found}";

    private IEnumerable<string> Unworded()
    {
        var ids = new Once<string>();
        foreach (var rule in decided.Live)
            if (rule.State.Standing == Standing.Stands && rule.IsPublished && !HasStep(rule.Rule)) ids.Add(rule.Rule.Id);
        if (ids.Count > 0)
            yield return $"Nothing to report: what applies ({string.Join(", ", ids.ToImmutable())}) has no words of its own.";
    }

    private static bool HasStep(Rule rule)
    {
        foreach (var conclusion in rule.Conclusions)
            if (conclusion is NextStepConclusion or EvaluateConclusion)
                return true;
        return false;
    }

    private string? Undecided()
    {
        // Beside an earlier study the note is the answer; what could still be measured is no lack.
        if (!reading.Notes.IsEmpty && decided.HasEarlierStudy) return null;
        return reading.AskNext.IsEmpty ? CouldNotBeJudged() : Needed();
    }

    private string Needed() => $" Needed: {string.Join("; ", reading.AskNext.Take(MostAsked).Select(m => m.Text))}.";

    /// <summary>
    /// What could not be judged, or is looked for in a structure that was not sent. Of a rule that waits for many of those nothing
    /// is said: it is not about what was sent.
    /// </summary>
    private string? CouldNotBeJudged()
    {
        var hidden = new Once<string>();
        foreach (var sent in decided.Sent)
            if (NotAssessable(sent) is { } line) hidden.Add(line);
        if (hidden.Count > 0) return $" Not assessable: {string.Join("; ", hidden.Sorted(string.CompareOrdinal))}.";
        var elsewhere = reading.Unknown.Where(u => u.Missing.Length is > 0 and <= MostAsked).SelectMany(u => u.Missing)
            .Distinct().Take(MostAsked).Select(Asked).ToList();
        if (elsewhere.Count > 0) return $" Needed: {string.Join("; ", elsewhere)}.";
        var ids = reading.Unknown.Where(u => u.Missing.IsEmpty).Select(u => u.Rule.Id).Distinct().ToList();
        return ids.Count == 0 ? null : $" With everything measured this stays undecided: {string.Join(", ", ids)}.";
    }

    private string Asked(MissingKey key)
    {
        if (decided.Find(key.Subject) is { } subject) return $"{subject.Title}: {decided.TitleOf(key.Subject, key.Finding)}";
        // Nothing of it was sent.
        foreach (var structure in decided.Examination.Network.Pack.Vocabulary.Structures.Values)
            if (key.Subject == structure.Name || key.Subject.EndsWith($" {structure.Name}", StringComparison.Ordinal))
                return $"{key.Subject[..^structure.Name.Length]}{structure.Title}: "
                    + (structure.Kind.Findings.GetValueOrDefault(key.Finding)?.Title ?? key.Finding);
        return $"{key.Subject}: {key.Finding}";
    }

    private static string? NotAssessable(StudySubject sent)
    {
        var title = new Subject(sent.Structure, sent.Side, null).Title;
        if (sent.IsNotAssessable) return title;
        var findings = new Once<string>();
        foreach (var finding in sent.Findings.InOrder)
            if (finding.Value is NotAssessableValue) findings.Add(finding.Finding.Title);
        foreach (var lesion in sent.Lesions)
            foreach (var finding in lesion.Findings.InOrder)
                if (finding.Value is NotAssessableValue) findings.Add(finding.Finding.Title);
        return findings.Count == 0 ? null : $"{title} ({string.Join(", ", findings.ToImmutable())})";
    }
}
