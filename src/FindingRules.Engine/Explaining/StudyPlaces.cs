using FindingRules.Model.Explanations;
using FindingRules.Model.Studies;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Explaining;

/// <summary>Where a finding stands in the study as it was sent.</summary>
internal sealed class StudyPlaces
{
    // By name and not by value: equal values may be one object.
    private readonly Dictionary<(bool IsEarlier, Subject Subject, Finding Finding), Location> _places = [];

    public StudyPlaces(Study study)
    {
        Add(false, Subject.Study, study.Facts);
        Add(true, Subject.Study, study.EarlierFacts);
        foreach (var subject in study.Subjects) Add(false, subject);
        foreach (var subject in study.Earlier ?? []) Add(true, subject);
    }

    /// <summary>
    /// Of a lesion its own, else that of its structure; null for what was not sent itself, and for a study that was not read
    /// from a text.
    /// </summary>
    public StudyPlace? Of(bool isEarlier, Subject subject, Finding finding)
    {
        if (!_places.TryGetValue((isEarlier, subject, finding), out var at)
            && !_places.TryGetValue((isEarlier, subject.Whole, finding), out at))
            return null;
        return at.Pointer is { } pointer ? new StudyPlace(pointer, at.Start.Line, at.Start.Column) : null;
    }

    private void Add(bool isEarlier, StudySubject sent)
    {
        var whole = new Subject(sent.Structure, sent.Side, null);
        Add(isEarlier, whole, sent.Findings);
        foreach (var lesion in sent.Lesions) Add(isEarlier, whole with { Lesion = lesion.Id }, lesion.Findings);
    }

    private void Add(bool isEarlier, Subject subject, Findings findings)
    {
        foreach (var sent in findings.ByName.Values) _places.TryAdd((isEarlier, subject, sent.Finding), sent.Location);
    }
}
