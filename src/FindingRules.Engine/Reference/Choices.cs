using System.Collections.Immutable;
using FindingRules.Model.Conditions;

namespace FindingRules.Engine.Reference;

/// <summary>
/// Which lesion each structure in a statement stands for. One statement means one lesion of each structure, however
/// often it names it.
/// </summary>
internal sealed record Choices(ImmutableDictionary<Spot, Spot> ByStructure)
{
    public static Choices None { get; } = new(ImmutableDictionary<Spot, Spot>.Empty);

    /// <summary>Every instance that may be meant by the place, each with the choice it takes.</summary>
    public IEnumerable<(Choices Choices, Spot? Spot)> At(Place place, Spot own, Whereabouts whereabouts)
    {
        if (whereabouts.Resolve(place, own) is not { } spot) return [(this, null)];
        if (ByStructure.TryGetValue(spot, out var chosen)) return [(this, chosen)];
        return whereabouts.InstancesOf(spot).Select(i => (With(spot, i), (Spot?)i));
    }

    public Choices With(Spot structure, Spot instance) =>
        structure == instance ? this : new(ByStructure.SetItem(structure, instance));
}
