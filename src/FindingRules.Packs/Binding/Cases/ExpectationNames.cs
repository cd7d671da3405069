using FindingRules.Model.Packs;
using FindingRules.Packs.Binding.Linking;

namespace FindingRules.Packs.Binding.Cases;

/// <summary>What an expectation may name.</summary>
internal sealed record ExpectationNames(Dictionary<string, Rule> Rules, BindingContext Context)
{
    public Symbols Symbols => Context.Symbols;

    public bool IsExcusedRule(string id) => OverChecks.IsExcused(id, Context);
}
