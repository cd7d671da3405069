using FindingRules.Model.Conditions;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Testing.Generators;

/// <summary>Places that a condition may speak of from where it stands, each with the findings that are there.</summary>
internal sealed class PlaceDrawing(Draw draw, Vocabulary vocabulary)
{
    public Finding StudyMeasure { get; } = vocabulary.StudyFacts.Values.First(f => f.Type is MeasureType);

    public (Place Place, Finding Finding) Find<TType>(Scope own)
        where TType : FindingType
    {
        for (var tries = 0; tries < 4; tries++)
        {
            var (place, kind) = Any(own);
            var findings = (kind?.Findings ?? vocabulary.StudyFacts).Values.Where(f => f.Type is TType).ToList();
            if (findings.Count > 0) return (place, draw.Of(findings));
        }
        var here = own.IsStudy ? vocabulary.StudyFacts : own.Kind!.Findings;
        return (own.IsStudy ? Place.Study : Place.Own, here.Values.First(f => f.Type is TType));
    }

    /// <param name="own">What the condition stands in: the rule's scope, or the structures that a quantifier counts.</param>
    public (Place Place, Kind? Kind) Any(Scope own)
    {
        var isEarlier = draw.Chance(12);
        if (own.IsStudy) return (Place.Study with { IsEarlier = isEarlier }, null);
        var (relation, kind, structure) = draw.Weighted<Func<(PlaceRelation, Kind?, Structure?)>>(
            (60, () => (PlaceRelation.Own, own.Kind, null)),
            (9, () => (PlaceRelation.Study, null, null)),
            (10, () => own.Structures.Any(s => s.IsPaired) ? (PlaceRelation.Contralateral, own.Kind, null) : (PlaceRelation.Own, own.Kind, null)),
            (15, () => Other(PlaceRelation.Ipsilateral, vocabulary.Structures.Values)),
            (6, () => Other(PlaceRelation.Contralateral, vocabulary.Structures.Values.Where(s => s.IsPaired))))();
        return (new Place(relation, structure, isEarlier), kind);
    }

    private (PlaceRelation, Kind?, Structure?) Other(PlaceRelation relation, IEnumerable<Structure> structures)
    {
        var structure = draw.Of(structures.ToList());
        return (relation, structure.Kind, structure);
    }
}
