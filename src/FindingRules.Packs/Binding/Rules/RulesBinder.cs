using FindingRules.Model.Messages;
using FindingRules.Packs.Binding.Files;

namespace FindingRules.Packs.Binding.Rules;

/// <summary>
/// All rules. Reading their texts is most of the work of loading a pack, so they are read side by side; what is found is
/// kept in the order of the files.
/// </summary>
internal static class RulesBinder
{
    private const int RulesPerBatch = 64;

    public static List<RuleDraft> Bind(BindingContext context)
    {
        var entries = ListedEntries.Read(context, FileKind.Rules, "rule", "CUFF-010");
        var drafts = new RuleDraft?[entries.Count];
        var heard = new MessageBag[entries.Count];
        Parallel.For(0, (entries.Count + RulesPerBatch - 1) / RulesPerBatch, batch =>
        {
            var end = Math.Min(entries.Count, (batch + 1) * RulesPerBatch);
            for (var i = batch * RulesPerBatch; i < end; i++)
                drafts[i] = RuleBinder.Bind(entries[i], context, heard[i] = new MessageBag());
        });
        var bound = new List<RuleDraft>(entries.Count);
        for (var i = 0; i < entries.Count; i++)
        {
            context.Messages.AddRange(heard[i].Sorted());
            if (drafts[i] is { } draft) bound.Add(draft);
            else context.Known.AddBroken(entries[i].Name.Value);
        }
        return bound;
    }
}
