using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using FindingRules.Model.Packs;

namespace FindingRules.Schemas;

/// <summary>The JSON Schema (draft 2020-12) of a study for the vocabulary of one pack, for whoever builds a form or a sender.</summary>
public static class StudySchema
{
    private static readonly JsonSerializerOptions Layout = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Write(Pack pack) => Describe(pack).ToJsonString(Layout) + "\n";

    private static JsonObject Describe(Pack pack)
    {
        var properties = new JsonObject
        {
            ["study"] = Key("An opaque key of the sender's own. It must not say who the patient is."),
            ["pack"] = Part.Const(pack.Name, "The pack that this schema was written for."),
            ["supersedes"] = Key("The key of the study that this one amends."),
        };
        if (pack.Protocols.Count > 0) properties["protocols"] = ProtocolPart.All(pack.Protocols.Values);
        properties["facts"] = Part.Reference("facts");
        properties["subjects"] = Part.Reference("subjects");
        properties["earlier"] = Earlier();

        var schema = Part.Object($"What {pack.Title} ({pack.Department}) can read.", properties, "study");
        schema.Insert(0, "$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.Insert(1, "title", $"Study for {pack.Name} {pack.Version}");
        schema.Insert(2, "$comment", $"meaning digest {pack.MeaningDigest}");
        schema["$defs"] = Definitions(pack);
        return schema;
    }

    private static JsonObject Definitions(Pack pack)
    {
        var definitions = new JsonObject
        {
            ["facts"] = FindingPart.All("Facts of the study as a whole.", pack.Vocabulary.StudyFacts.Values),
            ["subjects"] = SubjectPart.All(pack.Vocabulary),
        };
        foreach (var kind in SubjectPart.KindsOf(pack.Vocabulary))
            definitions[SubjectPart.NameOf(kind)] =
                FindingPart.All($"What can be recorded of each {kind.Name}.", kind.Findings.Values);
        return definitions;
    }

    private static JsonObject Earlier() => Part.Object("The findings of an earlier study of the same patient.", new JsonObject
    {
        ["facts"] = Part.Reference("facts"),
        ["subjects"] = Part.Reference("subjects"),
    });

    private static JsonObject Key(string description) => Part.Text(description, "^[A-Za-z0-9._-]{1,64}$");
}
