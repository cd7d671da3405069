using FindingRules.Model.Packs;

namespace FindingRules.Engine.Compiling;

/// <summary>A bound pack in, a network out.</summary>
public static class NetworkCompiler
{
    public static RuleNetwork Compile(Pack pack) => new(pack);
}
