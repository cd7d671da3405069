using FindingRules.Model.Packs;

namespace FindingRules.Engine.Compiling;

/// <summary>A compiled pack: immutable, shared by any number of evaluations at once.</summary>
public sealed class RuleNetwork
{
    internal RuleNetwork(Pack pack) => Pack = pack;

    public Pack Pack { get; }
}
