using FindingRules.Model.Packs;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Rules;

/// <summary>A bound rule together with what is written of its <c>over</c>.</summary>
internal sealed record RuleDraft(Rule Rule, ScalarNode Id, IReadOnlyList<ScalarNode> Over);
