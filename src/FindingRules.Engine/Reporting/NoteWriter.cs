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
        return
        [
            .. study.Subjects.OrderBy(s => s.Structure.Name, StringComparer.Ordinal).ThenBy(s => s.Side)
                .SelectMany(s => Notes(s).Concat(Unanswered(s, answered, described))),
        ];
    }

    private static IEnumerable<string> Notes(StudySubject sent)
    {
        var title = new Subject(sent.Structure, sent.Side, null).Title;
        if (sent.IsNormal && NormalFilling.Departure(sent) is { } departure)
            yield return $"The {title} was sent as normal, but {departure} speaks against it: nothing else of it was taken as normal.";
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
        let left = NormalFilling.Departing(part.Findings)
            .Where(f => !answered.Contains((subject.Key, f.Finding.Name)))
            .Where(f => f.Finding.Type is SignType || !(described.Contains(subject.Key) || described.Contains(subject.Whole.Key)))
            .OrderBy(f => f.Finding.Name, StringComparer.Ordinal)
            .Select(f => $"{f.Finding.Title} {f.Value.ToString()!.Replace('-', ' ')}").ToList()
        where left.Count > 0
        select $"Also recorded of the {subject.Title}: {string.Join(", ", left)}; no rule speaks of it.";

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
