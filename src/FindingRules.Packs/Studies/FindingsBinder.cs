using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Studies;

/// <summary>Findings by name, each with a value of its type.</summary>
internal static class FindingsBinder
{
    public static Findings Bind(DocumentNode node, Structure structure, StudyContext context) =>
        BindAll(node, structure.Kind.Findings, structure, context);

    public static Findings BindFacts(DocumentNode node, StudyContext context) =>
        BindAll(node, context.Vocabulary.StudyFacts, null, context);

    private static Findings BindAll(
        DocumentNode node, ImmutableSortedDictionary<string, Finding> known, Structure? structure, StudyContext context)
    {
        if (Members.AsObject(node, structure is null ? "`facts`" : "`findings`", context) is not { } members) return Findings.None;
        if (members.Entries.Count == 0) return Findings.None;
        var found = new List<SentFinding>(members.Entries.Count);
        foreach (var (name, value) in members.Entries)
        {
            if (!known.TryGetValue(name.Value, out var finding))
                context.Messages.Add(Unknown(name, known, structure, context.Vocabulary));
            else if (ValueReader.Read(value, finding, context) is { } read)
                found.Add(new SentFinding(finding, read, value.Location));
        }
        return Findings.Of(found);
    }

    private static Message Unknown(
        ScalarNode name, ImmutableSortedDictionary<string, Finding> known, Structure? structure, Vocabulary vocabulary)
    {
        var shown = Shown.Briefly(name.Value);
        if (IdentityWords.Includes(name.Value)) return StudyMessages.IdentityMember(name.Location, shown);
        string[] names = [.. known.Keys];
        if (structure is null)
        {
            var kind = vocabulary.Kinds.Values.FirstOrDefault(k => k.Findings.ContainsKey(name.Value));
            var help = kind is null ? null : $"it is a finding of each {kind}: send it with its structure";
            return StudyMessages.UnknownFact(name.Location, shown, help, names);
        }
        return StudyMessages.UnknownFinding(name.Location, structure.Name, shown, Elsewhere(name.Value, structure, vocabulary), names);
    }

    private static string? Elsewhere(string name, Structure structure, Vocabulary vocabulary)
    {
        if (vocabulary.StudyFacts.ContainsKey(name)) return "it is a fact of the study: send it under `facts`";
        var kind = vocabulary.Kinds.Values.FirstOrDefault(k => k.Findings.ContainsKey(name));
        return kind is null ? null : $"each {kind} has it; `{structure.Name}` is a {structure.Kind}";
    }
}
