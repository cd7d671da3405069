using System.Collections.Immutable;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Content;

/// <summary>Structures and their findings where a file names them outside the rule language.</summary>
internal static class StructureLookup
{
    public static Structure? Find(ScalarNode name, BindingContext context)
    {
        var structures = context.Symbols.Vocabulary.Structures;
        if (structures.TryGetValue(name.Value, out var structure)) return structure;
        if (!context.Known.Excuses(name.Value, FileKind.Vocabulary))
            context.Messages.Add(LinkMessages.UnknownStructure(name.Inside, Shown.Briefly(name.Value), [.. structures.Keys]));
        return null;
    }

    public static ImmutableArray<Finding> Findings(Structure structure, List<ScalarNode> names, Fields fields, BindingContext context) =>
        Findings(structure.Name, structure.Kind.Findings, names, fields, context);

    public static ImmutableArray<Finding> Findings(
        string owner, IReadOnlyDictionary<string, Finding> known, List<ScalarNode> names, Fields fields, BindingContext context)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>(names.Count);
        foreach (var name in names)
        {
            if (known.TryGetValue(name.Value, out var finding)) findings.Add(finding);
            else if (context.Known.Excuses(name.Value, FileKind.Vocabulary)) fields.Spoil();
            else fields.Report(LinkMessages.UnknownFindingOf(name.Inside, owner, Shown.Briefly(name.Value), [.. known.Keys]));
        }
        return findings.ToImmutable();
    }
}
