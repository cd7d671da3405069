using System.Collections.Immutable;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Content;

internal static class ProtocolsBinder
{
    public static ImmutableSortedDictionary<string, Protocol> Bind(BindingContext context)
    {
        var protocols = ImmutableSortedDictionary.CreateBuilder<string, Protocol>(StringComparer.Ordinal);
        foreach (var (name, body) in NamedEntries.Read(context, FileKind.Protocols, "protocols", "protocol"))
            if (BindOne(name, body, context) is { } protocol) protocols.Add(protocol.Name, protocol);
            else context.Known.AddBroken(name.Value);
        return protocols.ToImmutable();
    }

    private static Protocol? BindOne(ScalarNode name, DocumentNode body, BindingContext context)
    {
        var fields = Fields.Of(
            body, $"the protocol `{name.Value}`", name.Inside, context.Messages, ["title", "requires", "calm", "source"],
            "as-indicated", "facts");
        if (fields is null) return null;
        var title = fields.Words("title");
        var firsts = new Dictionary<string, ScalarNode>(StringComparer.Ordinal);
        var required = BindItems(fields, "requires", firsts, context);
        var indicated = BindItems(fields, "as-indicated", firsts, context);
        var facts = BindFacts(fields, context);
        var calm = WordingReader.Read(fields, "calm", new WordingSources(Scope.Study, context), context);
        var sources = ReferencesBinder.Look(fields, context);
        return fields.IsSound
            ? new Protocol(name.Value, title!, required, indicated, calm!, sources, name.Location) { Facts = facts }
            : null;
    }

    private static ImmutableArray<Finding> BindFacts(Fields fields, BindingContext context) => fields.Has("facts")
        ? StructureLookup.Findings("study", context.Symbols.Vocabulary.StudyFacts, fields.Texts("facts", least: 1), fields, context)
        : [];

    private static ImmutableArray<ProtocolItem> BindItems(
        Fields fields, string key, Dictionary<string, ScalarNode> firsts, BindingContext context)
    {
        var items = ImmutableArray.CreateBuilder<ProtocolItem>();
        foreach (var node in fields.Items(key, least: 1) ?? [])
        {
            if (node is not MappingNode { Entries: [var (name, _)] } mapping)
            {
                if (node is BrokenNode) fields.Spoil();
                else
                    fields.Report(PackMessages.WrongForm(
                        node.Opening, $"an entry of `{key}` of {fields.Owner}", node.Form, "one structure with its findings"));
                continue;
            }
            if (!firsts.TryAdd(name.Value, name))
                fields.Report(PackMessages.ListedTwice(name.Inside, fields.Owner, Shown.Briefly(name.Value),
                    firsts[name.Value].Inside));
            if (BindItem(mapping, name, context) is { } item) items.Add(item);
            else fields.Spoil();
        }
        return items.ToImmutable();
    }

    private static ProtocolItem? BindItem(MappingNode mapping, ScalarNode name, BindingContext context)
    {
        if (StructureLookup.Find(name, context) is not { } structure) return null;
        var fields = Fields.Of(mapping, "a protocol", name.Inside, context.Messages, [], name.Value)!;
        var findings = StructureLookup.Findings(structure, fields.Texts(name.Value, least: 1), fields, context);
        return fields.IsSound ? new ProtocolItem(structure, findings, name.Location) : null;
    }
}
