using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Compiling;

/// <summary>
/// Where a derived measure is worked out at another place, each place inside its expression is taken from there: the
/// contralateral of the ipsilateral subscapularis is the contralateral subscapularis.
/// </summary>
internal static class PlaceComposition
{
    private static readonly Location _nowhere = new SourceText("no study", "").Whole;

    /// <summary>The earlier study of the earlier study: a place that nobody can find, whatever is asked from it.</summary>
    private static readonly Place _noStudy = Unfindable(new Structure(
        "no-study", new Kind("no-study", null, ImmutableSortedDictionary<string, Finding>.Empty, _nowhere),
        "no study", "", isPaired: false, _nowhere), isEarlier: true);

    public static Place From(Place outer, Place inner)
    {
        if (outer == _noStudy || (outer.IsEarlier && inner.IsEarlier)) return _noStudy;
        var isEarlier = outer.IsEarlier || inner.IsEarlier;
        if (inner.Relation == PlaceRelation.Study || outer.Relation == PlaceRelation.Study)
            return inner with { Relation = PlaceRelation.Study, IsEarlier = isEarlier };
        if (inner.Relation == PlaceRelation.Own)
            return outer with
            {
                IsEarlier = isEarlier,
                FollowsLesion = outer.FollowsLesion || (inner.IsEarlier && outer.Relation != PlaceRelation.Own),
            };
        if (outer.Relation == PlaceRelation.Own) return inner with { IsEarlier = isEarlier };
        if (inner is { Relation: PlaceRelation.Ipsilateral, Structure.IsPaired: false }) return inner with { IsEarlier = isEarlier };
        // A structure of the midline has no other side, and no side is its own.
        if (outer.Structure is { IsPaired: false }) return Unfindable(outer.Structure, isEarlier);
        if (inner.Structure is { IsPaired: false }) return Unfindable(inner.Structure, isEarlier);
        var isOtherSide = (outer.Relation == PlaceRelation.Contralateral) != (inner.Relation == PlaceRelation.Contralateral);
        return new Place(
            isOtherSide ? PlaceRelation.Contralateral : PlaceRelation.Ipsilateral, inner.Structure ?? outer.Structure, isEarlier);
    }

    private static Place Unfindable(Structure unpaired, bool isEarlier) => new(PlaceRelation.Contralateral, unpaired, isEarlier);
}
