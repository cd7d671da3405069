using FindingRules.Model.Conditions;

namespace FindingRules.Engine.Compiling;

/// <summary>
/// Where a derived measure is worked out at another place, each place inside its expression is taken from there: the
/// contralateral of the ipsilateral subscapularis is the contralateral subscapularis.
/// </summary>
internal static class PlaceComposition
{
    public static Place From(Place outer, Place inner)
    {
        var isEarlier = outer.IsEarlier || inner.IsEarlier;
        if (inner.Relation == PlaceRelation.Study || outer.Relation == PlaceRelation.Study)
            return inner with { Relation = PlaceRelation.Study, IsEarlier = isEarlier };
        if (inner.Relation == PlaceRelation.Own) return outer with { IsEarlier = isEarlier };
        if (outer.Relation == PlaceRelation.Own) return inner with { IsEarlier = isEarlier };
        var structure = inner.Structure ?? outer.Structure;
        var isOtherSide = (outer.Relation == PlaceRelation.Contralateral) != (inner.Relation == PlaceRelation.Contralateral);
        if (isOtherSide) return new Place(PlaceRelation.Contralateral, structure, isEarlier);
        return structure is null
            ? Place.Own with { IsEarlier = isEarlier }
            : new Place(PlaceRelation.Ipsilateral, structure, isEarlier);
    }
}
