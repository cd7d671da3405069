using FindingRules.Model.Vocabularies;

namespace FindingRules.Model.Conditions;

/// <summary>Whose finding a statement speaks of.</summary>
/// <param name="Relation">How to get there from the rule's subject (or the structure a quantifier counts).</param>
/// <param name="Structure">The structure, where another one is named; null for the subject's own or the study.</param>
/// <param name="IsEarlier">Speak of the earlier study.</param>
/// <param name="FollowsLesion">
/// Of the earlier study the lesion that is chosen in this one, as a derived measure of another structure compares now with before.
/// Conditions are never written so; compiling a derived measure makes it.
/// </param>
public sealed record Place(PlaceRelation Relation, Structure? Structure = null, bool IsEarlier = false, bool FollowsLesion = false)
{
    public static Place Own { get; } = new(PlaceRelation.Own);

    public static Place Study { get; } = new(PlaceRelation.Study);
}

public enum PlaceRelation
{
    /// <summary>The rule's own subject.</summary>
    Own,

    /// <summary>The study as a whole.</summary>
    Study,

    /// <summary>Another structure on the same side; one that is not paired is itself.</summary>
    Ipsilateral,

    /// <summary>The same structure (where <see cref="Place.Structure"/> is null) or another on the other side.</summary>
    Contralateral,
}
