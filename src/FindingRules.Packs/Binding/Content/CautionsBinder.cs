using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Content;

internal static class CautionsBinder
{
    public static void Bind(BindingContext context)
    {
        var cautions = context.Symbols.Cautions.ToBuilder();
        foreach (var (name, body) in NamedEntries.Read(context, FileKind.Cautions, "cautions", "caution"))
            if (BindOne(name, body, context) is { } caution) cautions.Add(caution.Name, caution);
            else context.Known.AddBroken(name.Value);
        context.Symbols = context.Symbols with { Cautions = cautions.ToImmutable() };
    }

    private static Caution? BindOne(ScalarNode name, DocumentNode body, BindingContext context)
    {
        var fields = Fields.Of(body, $"the caution `{name.Value}`", name.Inside, context.Messages, ["says"], "source");
        if (fields is null) return null;
        if (context.Symbols.NextSteps.TryGetValue(name.Value, out var step))
            fields.Report(LinkMessages.NameTaken(name.Inside, "caution", name.Value, "next step", step.DeclaredAt));
        var says = WordingReader.Read(fields, "says", new WordingSources(null, context), context);
        var sources = ReferencesBinder.Look(fields, context);
        return fields.IsSound ? new Caution(name.Value, says!, sources, name.Location) : null;
    }
}
