using System.Collections.Immutable;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Quantities;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Documents;
using FindingRules.Packs.Studies;

namespace FindingRules.Packs.Binding.Vocabularies;

/// <summary>Axes, then kinds, then structures, then the facts of the study.</summary>
internal static class VocabularyBinder
{
    public static void Bind(BindingContext context)
    {
        Replace(context, v => v with { Axes = BindAxes(context) });
        Replace(context, v => v with { Kinds = KindsBinder.Bind(context) });
        Replace(context, v => v with { Structures = BindStructures(context) });
        Replace(context, v => v with { StudyFacts = BindFacts(context) });
    }

    private static void Replace(BindingContext context, Func<Vocabulary, Vocabulary> change) =>
        context.Symbols = context.Symbols with { Vocabulary = change(context.Symbols.Vocabulary) };

    private static ImmutableSortedDictionary<string, Axis> BindAxes(BindingContext context)
    {
        var axes = Vocabulary.Empty.Axes.ToBuilder();
        foreach (var (name, body) in NamedEntries.Read(context, FileKind.Vocabulary, "axes", "axis"))
        {
            // An axis is a list alone; as a field of its own entry it is read like every other list.
            var holder = new MappingNode(name.Source, name.Span, [new MappingEntry(name, body)]);
            var fields = Fields.Of(holder, $"the axis `{name.Value}`", name.Inside, context.Messages, [], name.Value)!;
            var points = FindingBinder.BindWords(fields, name.Value, ExtentReader.None, context);
            if (points.Count > Axis.MostPoints)
                fields.Report(PackMessages.TooMany(body.Location, fields.Owner, points.Count, Axis.MostPoints));
            if (fields.IsSound) axes.Add(name.Value, new Axis(name.Value, [.. points], name.Location));
            else context.Known.AddBroken(name.Value);
        }
        return axes.ToImmutable();
    }

    private static ImmutableSortedDictionary<string, Structure> BindStructures(BindingContext context)
    {
        var structures = Vocabulary.Empty.Structures.ToBuilder();
        foreach (var (name, body) in NamedEntries.Read(context, FileKind.Vocabulary, "structures", "structure"))
            if (BindStructure(name, body, context) is { } structure) structures.Add(structure.Name, structure);
            else context.Known.AddBroken(name.Value);
        BreakEmptyKinds(structures, context);
        return structures.ToImmutable();
    }

    // A kind left without a structure may be the kind of one that a mistake keeps away.
    private static void BreakEmptyKinds(ImmutableSortedDictionary<string, Structure>.Builder structures, BindingContext context)
    {
        if (!context.Known.HasBroken) return;
        foreach (var kind in context.Symbols.Vocabulary.Kinds.Values)
            if (!structures.Values.Any(s => s.Kind.IsA(kind)))
                context.Known.AddBroken(kind.Name);
    }

    private static Structure? BindStructure(ScalarNode name, DocumentNode body, BindingContext context)
    {
        var owner = $"the structure `{name.Value}`";
        if (Fields.Of(body, owner, name.Inside, context.Messages,
            ["kind", "title", "region", "paired"]) is not { } fields) return null;
        var kinds = context.Symbols.Vocabulary.Kinds;
        if (kinds.TryGetValue(name.Value, out var taken))
            fields.Report(LinkMessages.NameTaken(name.Inside, "structure", name.Value, "kind", taken.DeclaredAt));
        var (title, region, isPaired) = (fields.Words("title"), fields.Words("region"), fields.Flag("paired"));
        Kind? kind = null;
        if (fields.Text("kind") is { } word && !kinds.TryGetValue(word.Value, out kind))
        {
            fields.Spoil();
            if (!context.Known.Excuses(word.Value, FileKind.Vocabulary))
                context.Messages.Add(LinkMessages.UnknownKind(word.Inside, Shown.Briefly(word.Value), [.. kinds.Keys]));
        }
        return fields.IsSound ? new Structure(name.Value, kind!, title!, region!, isPaired!.Value, name.Location) : null;
    }

    private static ImmutableSortedDictionary<string, Finding> BindFacts(BindingContext context)
    {
        var facts = Vocabulary.Empty.StudyFacts.ToBuilder();
        foreach (var (name, body) in NamedEntries.Read(context, FileKind.Vocabulary, "study", "study fact"))
        {
            if (FindingBinder.Bind(name, body, context) is not { } fact) continue;
            facts.Add(fact.Name, fact);
            if (fact.Type is MeasureType { IsWhole: false } age && age.Unit.Dimension == Unit.Year.Dimension)
                context.Messages.Add(PackMessages.AgeNotWhole(name.Inside, name.Value));
        }
        return facts.ToImmutable();
    }
}
