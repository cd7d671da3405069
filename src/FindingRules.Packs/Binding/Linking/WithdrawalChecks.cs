using System.Collections.Immutable;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Linking;

internal static class WithdrawalChecks
{
    public static ImmutableArray<Withdrawal> Bind(Manifest manifest, Dictionary<string, Rule> rules, BindingContext context)
    {
        var withdrawn = ImmutableArray.CreateBuilder<Withdrawal>(manifest.Withdrawn.Length);
        foreach (var (rule, on, because) in manifest.Withdrawn)
        {
            if (rules.ContainsKey(rule.Value)) withdrawn.Add(new Withdrawal(rule.Value, on, because));
            else if (!OverChecks.IsExcused(rule.Value, context))
                context.Messages.Add(LinkMessages.UnknownRule(rule.Inside, "`withdrawn`", Shown.Briefly(rule.Value), rules.Keys));
        }
        return withdrawn.ToImmutable();
    }
}
