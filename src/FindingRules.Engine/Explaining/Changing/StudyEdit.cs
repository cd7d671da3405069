using System.Collections.Immutable;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Explaining.Changing;

/// <summary>A study with findings replaced, added or taken away, as if it had been sent so.</summary>
internal static class StudyEdit
{
    /// <param name="value">Null takes the finding away.</param>
    public static Study With(Study study, FindingSlot slot, FindingValue? value)
    {
        if (slot.Subject.Structure is null)
            return slot.IsEarlier
                ? study with { Earlier = study.Earlier ?? [], EarlierFacts = With(study.EarlierFacts, slot, value, study) }
                : study with { Facts = With(study.Facts, slot, value, study) };
        return slot.IsEarlier
            ? study with { Earlier = With(study.Earlier ?? [], slot, value, study) }
            : study with { Subjects = With(study.Subjects, slot, value, study) };
    }

    /// <summary>Nothing is filled in as normal for the subject: what was not sent of it is unknown.</summary>
    public static Study WithoutNormals(Study study, bool isEarlier, Subject subject)
    {
        if (isEarlier) return study.Earlier is { } earlier ? study with { Earlier = WithoutNormals(earlier, subject) } : study;
        return study with { Subjects = WithoutNormals(study.Subjects, subject) };
    }

    private static ImmutableArray<StudySubject> WithoutNormals(ImmutableArray<StudySubject> subjects, Subject subject)
    {
        var at = IndexOf(subjects, subject);
        return at < 0 || !subjects[at].IsNormal ? subjects : subjects.SetItem(at, subjects[at] with { IsNormal = false });
    }

    private static ImmutableArray<StudySubject> With(
        ImmutableArray<StudySubject> subjects, FindingSlot slot, FindingValue? value, Study study)
    {
        var at = IndexOf(subjects, slot.Subject);
        if (at < 0)
            return value is null ? subjects : subjects.Add(new StudySubject(
                slot.Subject.Structure!, slot.Subject.Side, false, false, With(Findings.None, slot, value, study), [], study.Location));
        var subject = subjects[at];
        if (slot.Subject.Lesion is null)
            return subjects.SetItem(at, subject with { Findings = With(subject.Findings, slot, value, study) });
        var lesion = subject.Lesions.First(l => l.Id == slot.Subject.Lesion);
        var changed = lesion with { Findings = With(lesion.Findings, slot, value, study) };
        return subjects.SetItem(at, subject with { Lesions = subject.Lesions.Replace(lesion, changed) });
    }

    private static int IndexOf(ImmutableArray<StudySubject> subjects, Subject subject)
    {
        for (var i = 0; i < subjects.Length; i++)
            if (subjects[i].Structure == subject.Structure && subjects[i].Side == subject.Side)
                return i;
        return -1;
    }

    private static Findings With(Findings findings, FindingSlot slot, FindingValue? value, Study study) => new(value is null
        ? findings.ByName.Remove(slot.Finding.Name)
        : findings.ByName.SetItem(slot.Finding.Name, new SentFinding(slot.Finding, value, study.Location)));
}
