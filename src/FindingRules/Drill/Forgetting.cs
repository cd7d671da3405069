using System.Collections.Immutable;
using FindingRules.Model.Studies;

namespace FindingRules.Drill;

/// <summary>A study as it would be, had one line of the case not been seen.</summary>
internal static class Forgetting
{
    private const string Earlier = "earlier ";

    public static Study Of(Study study, SheetItem item)
    {
        if (!item.Subject.StartsWith(Earlier, StringComparison.Ordinal))
            return item.Subject == Subject.Study.Key
                ? study with { Facts = Without(study.Facts, item.Finding) }
                : study with { Subjects = Without(study.Subjects, item.Subject, item.Finding) };
        var key = item.Subject[Earlier.Length..];
        return key == Subject.Study.Key
            ? study with { EarlierFacts = Without(study.EarlierFacts, item.Finding) }
            : study with { Earlier = Without(study.Earlier ?? [], key, item.Finding) };
    }

    private static ImmutableArray<StudySubject> Without(ImmutableArray<StudySubject> subjects, string key, string finding) =>
        [.. subjects.Select(s => Without(s, key, finding))];

    private static StudySubject Without(StudySubject subject, string key, string finding)
    {
        var whole = new Subject(subject.Structure, subject.Side, null);
        if (whole.Key == key)
            return finding switch
            {
                SheetItem.Normal => subject with { IsNormal = false },
                "not-assessable" => subject with { IsNotAssessable = false },
                _ => subject with { Findings = Without(subject.Findings, finding) },
            };
        var lesions = subject.Lesions.Select(l =>
            (whole with { Lesion = l.Id }).Key == key ? l with { Findings = Without(l.Findings, finding) } : l);
        return subject with { Lesions = [.. lesions] };
    }

    private static Findings Without(Findings findings, string name) => new(findings.ByName.Remove(name));
}
