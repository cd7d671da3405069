using FindingRules.Model.Messages.Catalog;
using FindingRules.Packs.Binding.Names;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding;

internal readonly record struct NamedEntry(ScalarNode Name, DocumentNode Body);

/// <summary>Entries of the form <c>name: body</c>, over all files of a kind; each name once.</summary>
internal static class NamedEntries
{
    /// <param name="what">As messages name one: topic, next step.</param>
    public static List<NamedEntry> Read(BindingContext context, string kind, string key, string what)
    {
        var entries = new List<NamedEntry>();
        var firsts = new Dictionary<string, ScalarNode>(StringComparer.Ordinal);
        foreach (var root in context.Files.Roots(kind, key))
            foreach (var (name, body) in GroupOf(root, key, context))
            {
                if (!NameCheck.IsName(name, context.Messages))
                {
                    context.Known.AddBroken(name.Value);
                }
                else if (!firsts.TryAdd(name.Value, name))
                {
                    context.Messages.Add(PackMessages.DeclaredTwice(name.Inside, what, name.Value, firsts[name.Value].Location));
                }
                else
                {
                    entries.Add(new NamedEntry(name, body));
                }
            }
        return entries;
    }

    private static IReadOnlyList<MappingEntry> GroupOf(DocumentNode root, string key, BindingContext context)
    {
        if (root is MappingNode mapping) return mapping.Entries;
        if (root is not (BrokenNode or ScalarNode { IsNothing: true }))
            context.Messages.Add(PackMessages.WrongForm(root.Opening, $"`{key}`", root.Form, "names with their entries"));
        return [];
    }
}
