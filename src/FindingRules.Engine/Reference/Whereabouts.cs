using FindingRules.Model.Conditions;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reference;

/// <summary>A subject of this study, or the same one in the earlier study.</summary>
internal sealed record Spot(Subject Subject, bool IsEarlier = false)
{
    public Spot Whole => this with { Subject = Subject.Whole };
}

/// <summary>Finds the places that statements speak of. Null: nobody can say which subject is meant.</summary>
internal sealed class Whereabouts(Examination now, Examination? earlier)
{
    public FindingValue? Find(Spot? spot, Finding finding) => spot is null ? null : In(spot)?.Find(spot.Subject, finding);

    public bool IsAnythingKnown(Spot spot) => In(spot)?.IsAnythingKnown(spot.Subject) ?? false;

    /// <summary>Its lesions, or itself.</summary>
    public IEnumerable<Spot> InstancesOf(Spot spot)
    {
        if (spot.Subject.Lesion is not null || spot.Subject.Structure is null || In(spot) is not { } examination) return [spot];
        return examination.LesionsOf(spot.Subject)
            .Select(lesion => spot with { Subject = spot.Subject with { Lesion = lesion.Id } })
            .DefaultIfEmpty(spot);
    }

    public Spot? Resolve(Place place, Spot own)
    {
        // The earlier study has no earlier study of its own.
        if (place.IsEarlier && (own.IsEarlier || earlier is null)) return null;
        var isEarlier = place.IsEarlier || own.IsEarlier;
        return place.Relation switch
        {
            PlaceRelation.Study => new Spot(Subject.Study, isEarlier),
            PlaceRelation.Own => place.IsEarlier ? Earlier(own.Subject) : own,
            PlaceRelation.Ipsilateral => Beside(place.Structure!, own.Subject.Side),
            _ => Opposite(place.Structure ?? own.Subject.Structure, own.Subject.Side),
        };

        Spot? Beside(Structure structure, Side side) =>
            !structure.IsPaired ? new Spot(new Subject(structure, Side.None, null), isEarlier)
            : IsStated(side) ? new Spot(new Subject(structure, side, null), isEarlier)
            : null;

        Spot? Opposite(Structure? structure, Side side) =>
            structure is { IsPaired: true } && IsStated(side) ? new Spot(new Subject(structure, side.Other(), null), isEarlier) : null;
    }

    private Spot? Earlier(Subject own)
    {
        // Two studies that both left the side out need not mean the same side.
        if (own.Side == Side.Unknown) return null;
        if (own.Lesion is null) return new Spot(own, IsEarlier: true);
        var lesions = earlier!.LesionsOf(own.Whole);
        if (lesions.Any(l => l.Id == own.Lesion)) return new Spot(own, IsEarlier: true);
        return lesions.IsEmpty ? new Spot(own.Whole, IsEarlier: true) : null;
    }

    private static bool IsStated(Side side) => side is Side.Left or Side.Right;

    private Examination? In(Spot spot) => spot.IsEarlier ? earlier : now;
}
