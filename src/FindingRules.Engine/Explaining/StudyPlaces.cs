using FindingRules.Model.Explanations;
using FindingRules.Model.Studies;
using FindingRules.Model.Text;

namespace FindingRules.Engine.Explaining;

/// <summary>Where a value that the engine looked at stands in the study as it was sent.</summary>
internal sealed class StudyPlaces
{
    private readonly Dictionary<FindingValue, Location> _places = new(ReferenceEqualityComparer.Instance);

    public StudyPlaces(Study study)
    {
        Add(study.Facts);
        Add(study.EarlierFacts);
        foreach (var subject in study.Subjects.Concat(study.Earlier ?? []))
        {
            Add(subject.Findings);
            foreach (var lesion in subject.Lesions) Add(lesion.Findings);
        }
    }

    /// <summary>Null for what was filled in, and for a study that was not read from a text.</summary>
    public StudyPlace? Of(FindingValue? value)
    {
        if (value is null || !_places.TryGetValue(value, out var at) || at.Pointer is not { } pointer) return null;
        var start = at.Start;
        return new StudyPlace(pointer, start.Line, start.Column);
    }

    private void Add(Findings findings)
    {
        foreach (var sent in findings.ByName.Values) _places.TryAdd(sent.Value, sent.Location);
    }
}
