using FindingRules.Model.Conditions;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reference;

/// <summary>A subject of this study, or the same one in the earlier study.</summary>
/// <param name="IsNowhere">
/// Nobody can say which subject is meant, so that nothing is known of it; another place may still be found from there.
/// </param>
internal sealed record Spot(Subject Subject, bool IsEarlier = false, bool IsNowhere = false);

/// <summary>Finds the places that statements speak of.</summary>
internal sealed class Whereabouts(Examination now, Examination? earlier)
{
    public FindingValue? Find(Spot? spot, Finding finding) => spot is null ? null : In(spot)?.Find(spot.Subject, finding);

    public bool IsNotAssessable(Spot spot, Finding finding) => In(spot)?.IsNotAssessable(spot.Subject, finding) ?? false;

    public bool IsAnythingKnown(Spot spot) => In(spot)?.IsAnythingKnown(spot.Subject) ?? false;

    /// <summary>Its lesions, or itself.</summary>
    public IEnumerable<Spot> InstancesOf(Spot spot)
    {
        if (spot.Subject.Lesion is not null || spot.Subject.Structure is null || In(spot) is not { } examination) return [spot];
        return examination.LesionsOf(spot.Subject)
            .Select(lesion => spot with { Subject = spot.Subject with { Lesion = lesion.Id } })
            .DefaultIfEmpty(spot);
    }

    /// <summary>Null: the earlier study of the earlier study.</summary>
    public Spot? Resolve(Place place, Spot own)
    {
        // The earlier study has no earlier study of its own.
        if (place.IsEarlier && own.IsEarlier) return null;
        var isEarlier = place.IsEarlier || own.IsEarlier;
        return place.Relation switch
        {
            PlaceRelation.Study => new Spot(Subject.Study, isEarlier),
            PlaceRelation.Own when own.IsNowhere => own with { IsEarlier = isEarlier },
            PlaceRelation.Own => place.IsEarlier ? Earlier(own.Subject) : own,
            PlaceRelation.Ipsilateral => Beside(place.Structure!, own.Subject.Side),
            _ => Opposite(place.Structure ?? own.Subject.Structure, own.Subject.Side),
        };

        Spot Beside(Structure structure, Side side) => structure.IsPaired
            ? new Spot(new Subject(structure, side, null), isEarlier, IsNowhere: !IsStated(side))
            : new Spot(new Subject(structure, Side.None, null), isEarlier);

        Spot Opposite(Structure? structure, Side side) => new(
            new Subject(structure, side.Other(), null), isEarlier, IsNowhere: structure is not { IsPaired: true } || !IsStated(side));
    }

    private Spot Earlier(Subject own)
    {
        var lesions = earlier?.LesionsOf(own.Whole) ?? [];
        if (own.Lesion is not null && lesions.IsEmpty) return Earlier(own.Whole);
        // Two studies that both left the side out need not mean the same side.
        var isNowhere = own.Side == Side.Unknown || (own.Lesion is not null && !lesions.Any(l => l.Id == own.Lesion));
        return new Spot(own, IsEarlier: true, isNowhere);
    }

    private static bool IsStated(Side side) => side is Side.Left or Side.Right;

    private Examination? In(Spot spot) => spot.IsNowhere ? null : spot.IsEarlier ? earlier : now;
}
