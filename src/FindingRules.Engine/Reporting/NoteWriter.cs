using System.Collections.Immutable;
using FindingRules.Engine.Normalising;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>How the study was taken, where that is not what its sender may have expected, and what no rule answered.</summary>
internal static class NoteWriter
{
    public static ImmutableArray<string> Write(Study study, Reading reading)
    {
        var (answered, described) = (Answered(reading), Described(reading));
        var subjects = study.Subjects.OrderBy(s => s.Structure.Name, StringComparer.Ordinal).ThenBy(s => s.Side).ToList();
        return
        [
            .. NotFilled(subjects),
            .. subjects.SelectMany(s => Notes(s).Concat(Withheld(s, reading) ?? Unanswered(s, answered, described))),
            .. (study.Earlier ?? []).OrderBy(s => s.Structure.Name, StringComparer.Ordinal).ThenBy(s => s.Side)
                .SelectMany(s => Earlier(s, answered, described)),
        ];
    }

    /// <summary>One line for however many: it says the same of each.</summary>
    private static IEnumerable<string> NotFilled(IEnumerable<StudySubject> subjects)
    {
        var departing = (from sent in subjects
                         where sent.IsNormal && NormalFilling.Departure(sent) is not null
                         select (new Subject(sent.Structure, sent.Side, null).Title, With: NormalFilling.Departure(sent))).ToList();
        if (departing is [var one])
            yield return $"The {one.Title} is described as normal and with {one.With}: the rest of it is not taken as normal.";
        else if (departing.Count > 1)
            yield return $"Described as normal and with a finding: {string.Join(", ", departing.Select(d => $"{d.Title} ({d.With})"))}. "
                + "The rest of each is not taken as normal.";
    }

    private static IEnumerable<string> Notes(StudySubject sent)
    {
        var title = new Subject(sent.Structure, sent.Side, null).Title;
        if (sent.IsNotAssessable && sent.Findings.ByName.Count > 0)
            yield return $"The {title} was sent as not assessable and with findings: the findings were used. Check which holds.";
        foreach (var (finding, lesion) in Opposed(sent))
            yield return $"The {title} was sent with {finding.Finding.Title} {finding.Value}, which its lesion {lesion} contradicts: "
                + "check which holds.";
        if (sent.Side == Side.Unknown)
            yield return $"The side of the {sent.Structure.Title} was not sent: what depends on a side stays unknown.";
    }

    /// <summary>What is normal of the structure and not of a lesion in it.</summary>
    private static IEnumerable<(SentFinding Finding, string Lesion)> Opposed(StudySubject sent) =>
        from lesion in sent.Lesions
        from departing in NormalFilling.Departing(lesion.Findings)
        let whole = sent.Findings.Find(departing.Finding.Name)
        where whole is { Value: not NotAssessableValue } && !NormalFilling.Departing(sent.Findings).Contains(whole)
        select (whole, lesion.Id);

    /// <summary>
    /// What departs from normal must not vanish between the study and the report because no rule speaks of it. Where the
    /// subject is described, its pattern and sizes belong to what was described; a sign may still stand for itself.
    /// </summary>
    private static IEnumerable<string> Unanswered(
        StudySubject sent, HashSet<(string, string)> answered, HashSet<string> described) =>
        from part in sent.Lesions.Select(l => (l.Findings, Lesion: (string?)l.Id)).Prepend((sent.Findings, null))
        let subject = new Subject(sent.Structure, sent.Side, part.Lesion)
        let keys = part.Lesion is null
            ? sent.Lesions.Select(l => new Subject(sent.Structure, sent.Side, l.Id).Key).Append(subject.Key)
            : [subject.Key]
        let left = NormalFilling.Describing(part.Findings)
            .Where(f => !keys.Any(key => answered.Contains((key, f.Finding.Name))))
            .Where(f => f.Finding.Type is SignType || !(keys.Any(described.Contains) || described.Contains(subject.Whole.Key)))
            .OrderBy(f => f.Finding.Name, StringComparer.Ordinal)
            .Select(f => $"{f.Finding.Title} {f.Value.ToString()!.Replace('-', ' ')}").ToList()
        where left.Count > 0
        select $"Also recorded of the {subject.Title}: {string.Join(", ", left)}; not interpreted.";

    /// <summary>
    /// What was seen stays in the text while its name is withheld: what departs from normal, and what the hold rests on that has
    /// no normal. Null where something was said of the subject, or nothing is withheld.
    /// </summary>
    private static List<string>? Withheld(StudySubject sent, Reading reading)
    {
        var whole = new Subject(sent.Structure, sent.Side, null).Key;
        var holds = reading.Held.Where(h => IsOf(h.Subject)).ToList();
        var held = holds.SelectMany(h => h.RestsOn).Select(e => e.Finding).ToHashSet(StringComparer.Ordinal);
        if (holds.Count == 0 || reading.Suggestions.Any(s => IsOf(s.Subject))) return null;
        return
        [
            .. from part in sent.Lesions.Select(l => (l.Findings, Lesion: (string?)l.Id)).Prepend((sent.Findings, null))
               let departing = NormalFilling.Describing(part.Findings).ToList()
               let recorded = part.Findings.InOrder
                   .Where(f => departing.Contains(f) || (held.Contains(f.Finding.Name) && HasNoNormal(f)))
                   .Select(f => $"{f.Finding.Title} {f.Value.ToString()!.Replace('-', ' ')}").ToList()
               where recorded.Count > 0
               select $"Recorded of the {new Subject(sent.Structure, sent.Side, part.Lesion).Title}: {string.Join(", ", recorded)}; "
                   + "not interpreted while an answer is withheld.",
        ];

        bool HasNoNormal(SentFinding f) =>
            f.Value is not NotAssessableValue && !f.Finding.IsAbsentWhenNormal && NormalFilling.NormalOf(f.Finding.Type) is null;

        bool IsOf(string key) => key == whole || key.StartsWith($"{whole} ", StringComparison.Ordinal);
    }

    /// <summary>An earlier change must not vanish because the subject is described as normal now.</summary>
    private static IEnumerable<string> Earlier(StudySubject sent, HashSet<(string, string)> answered, HashSet<string> described)
    {
        var whole = new Subject(sent.Structure, sent.Side, null);
        if (described.Any(key => key == whole.Key || key.StartsWith($"{whole.Key} ", StringComparison.Ordinal))) yield break;
        var left = sent.Lesions.Select(l => l.Findings).Prepend(sent.Findings).SelectMany(NormalFilling.Describing)
            .Where(f => !answered.Contains(($"earlier {whole.Key}", f.Finding.Name)))
            .Select(f => $"{f.Finding.Title} {f.Value.ToString()!.Replace('-', ' ')}").Distinct().Order(StringComparer.Ordinal).ToList();
        if (left.Count > 0) yield return $"In the earlier study of the {whole.Title}: {string.Join(", ", left)}; compare.";
    }

    private static HashSet<string> Described(Reading reading) =>
    [
        .. reading.Suggestions.Select(s => s.Subject), .. reading.Held.Select(h => h.Subject), .. reading.Conflicts.Select(c => c.Subject),
    ];

    private static HashSet<(string, string)> Answered(Reading reading) =>
    [
        .. reading.Suggestions.SelectMany(s => s.RestsOn)
            .Concat(reading.Held.SelectMany(h => h.RestsOn))
            .Concat(reading.Conflicts.SelectMany(c => c.Values).SelectMany(v => v.RestsOn))
            .Concat(reading.Cautions.SelectMany(c => c.RestsOn))
            .Concat(reading.NextSteps.SelectMany(s => s.RestsOn))
            .Concat(reading.Probabilities.SelectMany(p => p.RestsOn))
            .Select(e => (e.Subject, e.Finding)),
    ];
}
