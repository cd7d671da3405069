using FindingRules.Model.Messages.Catalog;
using FindingRules.Packs.Binding.Names;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding;

/// <summary>Entries of the form <c>- id: …</c>, over all files of a kind; each id once.</summary>
internal static class ListedEntries
{
    public static List<NamedEntry> Read(BindingContext context, string kind, string what, string example)
    {
        var entries = new List<NamedEntry>();
        var firsts = new Dictionary<string, ScalarNode>(StringComparer.Ordinal);
        foreach (var root in context.Files.Roots(kind, kind))
            foreach (var item in ItemsOf(root, kind, context))
            {
                if (IdOf(item, what, context) is not { } id) continue;
                if (!NameCheck.IsId(id, example, context.Messages)) context.Known.AddBroken(id.Value);
                else if (firsts.TryAdd(id.Value, id)) entries.Add(new NamedEntry(id, item));
                else
                {
                    context.Messages.Add(PackMessages.DeclaredTwice(id.Inside, what, id.Value, firsts[id.Value].Location));
                    // One of the two was meant to have another id, which others may use.
                    context.Known.AddIncomplete(kind);
                }
            }
        return entries;
    }

    private static ScalarNode? IdOf(DocumentNode item, string what, BindingContext context)
    {
        if (item is BrokenNode) return null;
        if (item is not MappingNode mapping)
        {
            context.Messages.Add(PackMessages.WrongForm(item.Opening, $"a {what}", item.Form, "keys with values, `id` among them"));
            return null;
        }
        if (mapping.Find("id") is ScalarNode { IsNothing: false } id) return id;
        if (mapping.Find("id") is not BrokenNode) context.Messages.Add(PackMessages.MissingKey(mapping.Opening, $"a {what}", "id"));
        return null;
    }

    private static IReadOnlyList<DocumentNode> ItemsOf(DocumentNode root, string key, BindingContext context)
    {
        if (root is ListNode list) return list.Items;
        if (root is not (BrokenNode or ScalarNode { IsNothing: true }))
            context.Messages.Add(PackMessages.WrongForm(root.Opening, $"`{key}`", root.Form, "a list"));
        return [];
    }
}
