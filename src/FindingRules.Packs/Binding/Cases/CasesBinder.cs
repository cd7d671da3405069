using System.Collections.Immutable;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Documents;
using FindingRules.Packs.Studies;

namespace FindingRules.Packs.Binding.Cases;

internal static class CasesBinder
{
    /// <param name="pack">The pack as far as it is bound; a case's study is read against it like any other.</param>
    public static ImmutableArray<Case> Bind(BindingContext context, StudyContext pack, ExpectationNames names)
    {
        var cases = ImmutableArray.CreateBuilder<Case>();
        foreach (var (id, body) in ListedEntries.Read(context, FileKind.Cases, "case", "CASE-CUFF-010"))
            if (BindOne(id, body, context, pack, names) is { } @case)
                cases.Add(@case);
        return cases.ToImmutable();
    }

    private static Case? BindOne(ScalarNode id, DocumentNode body, BindingContext context, StudyContext pack, ExpectationNames names)
    {
        if (Fields.Of(body, $"the case `{id.Value}`", id.Inside, context.Messages,
            ["id", "about", "study", "expect"]) is not { } fields) return null;
        var about = fields.Words("about");
        var study = fields.Node("study") is { } sent ? BindStudy(sent, id.Value, context, pack) : null;
        var expect = fields.Node("expect") is { } node ? ExpectationBinder.Bind(node, id, context, names) : null;
        if (study is null || expect is null || !fields.IsSound) return null;
        return new Case(id.Value, about!, study, expect, id.Location);
    }

    // What a study of a case says of names that a mistake keeps away follows from that mistake.
    private static Study? BindStudy(DocumentNode sent, string id, BindingContext context, StudyContext pack)
    {
        var heard = new Model.Messages.MessageBag();
        var study = StudyBinder.Bind(sent, pack with { Messages = heard }, id);
        foreach (var message in heard.Sorted())
            if (!context.Known.ExcusesStudy(message))
                context.Messages.Add(message);
        return study;
    }
}
