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
        var subject = Part.Object("One structure on one side.", new JsonObject
        {
            ["structure"] = new JsonObject
            {
                ["description"] = "The structure.",
                ["oneOf"] = new JsonArray([.. vocabulary.Structures.Values.Select(s => Part.Const(s.Name, $"{s.Title} ({s.Region})"))]),
            },
            ["side"] = Part.Words(
                "left or right of a paired structure, left out where the side was not stated; one that is not paired has none, or midline.",
                ["left", "right", "midline"]),
            ["normal"] = Part.Flag("true: each finding that was not sent has its declared normal value."),
            ["notAssessable"] = Part.Flag("true: it was looked for and could not be seen."),
            ["findings"] = new JsonObject { ["description"] = "What was found.", ["type"] = "object" },
            ["lesions"] = Part.List("Several lesions, each with findings of its own on top of the structure's.", Part.Object(
                "One lesion.",
                new JsonObject
                {
                    ["id"] = Part.Text("What tells it from the others.", "^[A-Za-z0-9._-]{1,64}$"),
                    ["findings"] = new JsonObject { ["description"] = "What was found of it.", ["type"] = "object" },
                },
                "id", "findings")),
        }, "structure");
        subject["allOf"] = new JsonArray([.. KindsOf(vocabulary).Select(k => FindingsOf(k, vocabulary)), .. SidesOf(vocabulary)]);
        return Part.List("The structures that were examined.", subject);
    }

    private static JsonObject FindingsOf(Kind kind, Vocabulary vocabulary)
    {
        var structures = vocabulary.Structures.Values.Where(s => s.Kind == kind).Select(s => s.Name);
        return When(structures, new JsonObject
        {
            ["findings"] = Part.Reference(NameOf(kind)),
            ["lesions"] = new JsonObject
            {
                ["items"] = new JsonObject
                {
                    ["properties"] = new JsonObject { ["findings"] = Part.Reference(NameOf(kind)) },
                },
            },
        });
    }

    private static IEnumerable<JsonObject> SidesOf(Vocabulary vocabulary) =>
        from structure in vocabulary.Structures.Values
        group structure.Name by structure.IsPaired into structures
        let sides = structures.Key ? new[] { "left", "right" } : ["midline"]
        select When(structures, new JsonObject { ["side"] = new JsonObject { ["enum"] = Part.Strings(sides) } });

    private static JsonObject When(IEnumerable<string> structures, JsonObject properties) => new()
    {
        ["if"] = new JsonObject
        {
            ["properties"] = new JsonObject { ["structure"] = new JsonObject { ["enum"] = Part.Strings(structures) } },
            ["required"] = Part.Strings(["structure"]),
        },
        ["then"] = new JsonObject { ["properties"] = properties },
    };
}
