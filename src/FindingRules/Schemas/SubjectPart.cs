using System.Collections.Immutable;
using System.Text.Json.Nodes;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Schemas;

/// <summary>The structures of a study: which there are, which side they may have, and what can be recorded of them.</summary>
internal static class SubjectPart
{
    /// <summary>Kinds that some structure is of, in order of name.</summary>
    public static ImmutableArray<Kind> KindsOf(Vocabulary vocabulary) =>
        [.. vocabulary.Structures.Values.Select(s => s.Kind).Distinct().OrderBy(k => k.Name, StringComparer.Ordinal)];

    public static string NameOf(Kind kind) => $"findings-of-{kind.Name}";

    public static JsonObject All(Vocabulary vocabulary)
    {
        var structures = vocabulary.Structures.Values.ToArray();
        var subject = Part.Object("One structure on one side.", new JsonObject
        {
            ["structure"] = Part.OneOf("The structure.", structures.Select(s => (s.Name, $"{s.Title} ({s.Region})"))),
            ["side"] = Part.Words(
                "left or right of a paired structure, left out where the side was not stated; one that is not paired has none, or midline.",
                ["left", "right", "midline"]),
            ["normal"] = Part.Flag("true: each finding that was not sent has its declared normal value."),
            ["notAssessable"] = Part.Flag("true: it was looked for and could not be seen."),
            ["findings"] = Part.Any("What was found."),
            ["lesions"] = Part.List("Several lesions, each with findings of its own on top of the structure's.", Lesion()),
        }, "structure");
        subject["not"] = BothNormalAndNotAssessable();
        subject["allOf"] = new JsonArray(
        [
            .. structures.GroupBy(s => s.Kind).OrderBy(g => g.Key.Name, StringComparer.Ordinal).Select(FindingsOf),
            .. structures.GroupBy(s => s.IsPaired).Select(SideOf),
        ]);
        return Part.List("The structures that were examined.", subject);
    }

    private static JsonObject Lesion() => Part.Object("One lesion.", new JsonObject
    {
        ["id"] = Part.Text("What tells it from the others.", "^[A-Za-z0-9._-]{1,64}$"),
        ["findings"] = Part.Any("What was found of it."),
    }, "id");

    private static JsonObject BothNormalAndNotAssessable() => new()
    {
        ["required"] = Part.Strings(["normal", "notAssessable"]),
        ["properties"] = new JsonObject
        {
            ["normal"] = new JsonObject { ["const"] = true },
            ["notAssessable"] = new JsonObject { ["const"] = true },
        },
    };

    private static JsonObject FindingsOf(IGrouping<Kind, Structure> structures)
    {
        var findings = NameOf(structures.Key);
        return Part.When("structure", structures.Select(s => s.Name), new JsonObject
        {
            ["findings"] = Part.Reference(findings),
            ["lesions"] = new JsonObject
            {
                ["items"] = new JsonObject { ["properties"] = new JsonObject { ["findings"] = Part.Reference(findings) } },
            },
        });
    }

    private static JsonObject SideOf(IGrouping<bool, Structure> structures) =>
        Part.When("structure", structures.Select(s => s.Name), new JsonObject { ["side"] = Part.Sides(structures.Key) });
}
