using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Binding.Rules;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Linking;

/// <summary>Rules that yield must be there, be able to meet the one they yield to, and not yield in a circle.</summary>
internal static class OverChecks
{
    public static void Check(List<RuleDraft> drafts, Dictionary<string, Rule> rules, BindingContext context)
    {
        foreach (var draft in drafts)
            foreach (var target in draft.Over)
                CheckTarget(draft.Rule, target, rules, context);
        var ids = drafts.Where(d => d.Over.Count > 0).ToDictionary(d => d.Rule.Id, StringComparer.Ordinal);
        foreach (var path in Cycles.Find(ids.Keys, id => ids[id].Rule.Over.Where(ids.ContainsKey)))
            context.Messages.Add(LinkMessages.OverCycle(PlaceOf(ids[path[0]], path), Cycles.Show(path)));
    }

    private static Location PlaceOf(RuleDraft first, List<string> path) =>
        first.Over.First(o => o.Value == path[1 % path.Count]).Location;

    private static void CheckTarget(Rule rule, ScalarNode written, Dictionary<string, Rule> rules, BindingContext context)
    {
        if (!rules.TryGetValue(written.Value, out var target))
        {
            if (!IsExcused(written.Value, context))
                context.Messages.Add(LinkMessages.UnknownRule(
                    written.Inside, $"`over` of `{rule.Id}`", Shown.Briefly(written.Value), rules.Keys));
        }
        else if (!rule.Scope.Overlaps(target.Scope))
        {
            context.Messages.Add(LinkMessages.OverApart(written.Inside, rule.Id, rule.Scope.Written, target.Id, target.Scope.Written));
        }
        else if (rule.IsPerStructure != target.IsPerStructure)
        {
            context.Messages.Add(LinkMessages.OverOtherGrain(written.Inside, rule.Id, target.Id, rule.IsPerStructure));
        }
    }

    /// <summary>A band's rule comes from a scales file, every other one from a rules file.</summary>
    public static bool IsExcused(string id, BindingContext context) =>
        context.Known.Excuses(id, id.Contains('.', StringComparison.Ordinal) ? FileKind.Scales : FileKind.Rules);
}
