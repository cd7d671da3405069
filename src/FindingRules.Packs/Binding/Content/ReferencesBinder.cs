using System.Collections.Immutable;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Content;

internal static class ReferencesBinder
{
    public static void Bind(BindingContext context)
    {
        var references = context.References.ToBuilder();
        foreach (var (name, body) in NamedEntries.Read(context, FileKind.References, "references", "reference"))
            if (BindOne(name, body, context) is { } reference) references.Add(name.Value, reference);
            else context.Known.AddBroken(name.Value);
        context.References = references.ToImmutable();
    }

    /// <summary>The names under <c>source</c>, looked up.</summary>
    public static ImmutableArray<Reference> Look(Fields fields, BindingContext context)
    {
        var found = ImmutableArray.CreateBuilder<Reference>();
        foreach (var name in fields.Texts("source", least: fields.Has("source") ? 1 : 0))
        {
            if (context.References.TryGetValue(name.Value, out var reference)) found.Add(reference);
            else if (context.Known.Excuses(name.Value, FileKind.References)) fields.Spoil();
            else fields.Report(LinkMessages.UnknownReference(name.Inside, Shown.Briefly(name.Value), [.. context.References.Keys]));
        }
        return found.ToImmutable();
    }

    private static Reference? BindOne(ScalarNode name, DocumentNode body, BindingContext context)
    {
        var owner = $"the reference `{name.Value}`";
        var fields = Fields.Of(body, owner, name.Inside, context.Messages, ["cites", "status"],
            "facts", "read", "choice", "accuracy");
        if (fields is null) return null;
        ImmutableArray<string> facts = [.. fields.Texts("facts").Select(f => f.Value)];
        var status = fields.OneOf(
            "status", ("abstract-read", SourceStatus.AbstractRead), ("secondary", SourceStatus.Secondary),
            ("computed", SourceStatus.Computed), ("common-practice", SourceStatus.CommonPractice));
        var accuracy = fields.Node("accuracy") is { } node ? AccuracyBinder.Bind(node, name, fields, context) : null;
        var (cites, read, choice) = (fields.Words("cites"), fields.Words("read"), fields.Words("choice"));
        return fields.IsSound
            ? new Reference(name.Value, facts, cites!, status!.Value, read, choice, name.Location) { Accuracy = accuracy }
            : null;
    }
}
