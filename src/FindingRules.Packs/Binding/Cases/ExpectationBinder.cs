using System.Collections.Immutable;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Cases;

/// <summary>What a case expects; everything that it names must be there.</summary>
internal static class ExpectationBinder
{
    private static readonly string[] Keys =
    [
        "fires", "silent", "unknown", "yields", "borderline", "concludes", "held", "conflicts", "next", "done", "cautions",
        "asks", "probabilities", "impression",
    ];

    public static CaseExpectation? Bind(DocumentNode node, ScalarNode id, BindingContext context, ExpectationNames names)
    {
        var fields = Fields.Of(node, $"`expect` of `{id.Value}`", id.Inside, context.Messages, [], Keys);
        if (fields is null) return null;
        if (!Keys.Any(fields.Has)) fields.Report(PackMessages.TooFew(id.Inside, fields.Owner, 0, 1));
        var reader = new ExpectationReader(names, fields);
        var expect = new CaseExpectation
        {
            Fires = List(fields, "fires", reader.Rule),
            Silent = List(fields, "silent", reader.Rule),
            Unknown = List(fields, "unknown", reader.Rule),
            Yields = List(fields, "yields", reader.Rule),
            Borderline = List(fields, "borderline", reader.Rule),
            Concludes = List(fields, "concludes", reader.Conclusion),
            Held = List(fields, "held", reader.Topic),
            Conflicts = List(fields, "conflicts", reader.Topic),
            Next = List(fields, "next", reader.Step),
            Done = List(fields, "done", reader.Step),
            Cautions = List(fields, "cautions", reader.Caution),
            Asks = List(fields, "asks", reader.Finding),
            Probabilities = List(fields, "probabilities", reader.Probability),
            Impression = fields.Has("impression") ? fields.Text("impression")?.Value : null,
        };
        return fields.IsSound ? expect : null;
    }

    private static ImmutableArray<Expected> List(Fields fields, string key, Action<string, ScalarNode> check)
    {
        if (!fields.Has(key)) return default;
        var expected = ImmutableArray.CreateBuilder<Expected>();
        foreach (var text in fields.Texts(key))
        {
            check(key, text);
            expected.Add(new Expected(Fields.OneLine(text.Value), text.Location));
        }
        return expected.ToImmutable();
    }
}
