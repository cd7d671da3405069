using System.Text.Json.Nodes;
using FindingRules.Schemas;
using FindingRules.Testing;
using Json.Schema;
using Xunit;

namespace FindingRules.Tests.Schemas;

/// <summary>The schema written for a vocabulary takes and refuses the same studies as the reader does.</summary>
public sealed class StudySchemaTests
{
    /// <summary>The example pack and something that there is only one of.</summary>
    private static readonly ExamplePack Texts = ExamplePack.Plain.With("vocabulary", ExamplePack.Plain.TextOf("vocabulary")
        .Replace("\nstructures:\n", "  bone:\n    findings:\n      fracture: { sign: true, normal: absent }\n      healing: { measure: \"1\", plausible: 0 to 4, whole: true }\n\nstructures:\n  sternum: { kind: bone, title: sternum, region: chest, paired: false }\n", StringComparison.Ordinal));

    private static readonly CompiledPack Example = Texts.Compile();

    private static readonly SchemaFile Schema = SchemaFile.From(StudySchema.Write(Example.Pack));

    public static TheoryData<string> Folders() => [.. ExampleStudies.PackFolders];

    public static TheoryData<string> Accepted() =>
    [
        """{ "study": "S-1" }""",
        """{ "study": "S-1", "pack": "example", "supersedes": "S-0" }""",
        """{ "study": "S-1", "protocols": [{ "protocol": "shoulder", "side": "left" }] }""",
        """{ "study": "S-1", "facts": { "age": "61 years", "trauma": true, "height": { "value": 180, "unit": "cm" } } }""",
        """{ "study": "S-1", "facts": { "age": "7 months", "modality": "not-assessable" } }""",
        """{ "study": "S-1", "subjects": [{ "structure": "sternum", "side": "midline", "normal": true }] }""",
        """{ "study": "S-1", "subjects": [{ "structure": "sternum", "notAssessable": true }] }""",
        Healing("3"),
        Healing("\"3\""),
        Healing("\">=3\""),
        Healing("\"1 to 3\""),
        Healing("""{ "value": 3 }"""),
        Finding("fluid", """{ "from": "bursal", "to": "articular" }"""),
        Finding("fluid", "\"bursal\""),
        Finding("fluid", "\"none\""),
        Finding("fluid", """["bursal", { "from": "articular", "to": "articular" }]"""),
        Finding("thickness", "\"6.1 mm\""),
        Finding("thickness", "\"<2 mm\""),
        Finding("thickness", "\">= 0.5 cm\""),
        Finding("thickness", "\"2 mm to 0.3 cm\""),
        Finding("thickness", """{ "value": 6.1, "unit": "mm", "comparator": "<=" }"""),
        Finding("thickness", """{ "value": "6.1", "unit": "mm" }"""),
        Finding("thickness", "\"not-assessable\""),
        Finding("shadowing", "\"present\""),
        Finding("shadowing", "false"),
        Finding("echo", "\"anechoic\""),
        """{ "study": "S-1", "subjects": [{ "structure": "supraspinatus", "lesions": [{ "id": "L1", "findings": { "fluid": "bursal" } }, { "id": "L2" }] }] }""",
        """{ "study": "S-1", "earlier": { "facts": { "modality": "ultrasound" }, "subjects": [{ "structure": "biceps", "side": "left" }] } }""",
    ];

    public static TheoryData<string> Refused() =>
    [
        "{ }",
        "[]",
        """{ "study": "somebody's name" }""",
        """{ "study": "S-1", "patient": "P" }""",
        """{ "study": "S-1", "pack": "other" }""",
        """{ "study": "S-1", "protocols": [{ "protocol": "knee", "side": "left" }] }""",
        """{ "study": "S-1", "protocols": [{ "protocol": "shoulder", "side": "midline" }] }""",
        """{ "study": "S-1", "protocols": [{ "protocol": "shoulder" }] }""",
        """{ "study": "S-1", "facts": { "age": "61.5 years" } }""",
        """{ "study": "S-1", "facts": { "weight": "70 kg" } }""",
        """{ "study": "S-1", "facts": { "modality": "ct" } }""",
        """{ "study": "S-1", "subjects": [{ "structure": "plantar-fascia" }] }""",
        """{ "study": "S-1", "subjects": [{ "side": "left" }] }""",
        """{ "study": "S-1", "subjects": [{ "structure": "sternum", "side": "left" }] }""",
        """{ "study": "S-1", "subjects": [{ "structure": "biceps", "side": "midline" }] }""",
        """{ "study": "S-1", "subjects": [{ "structure": "biceps", "normal": true, "notAssessable": true }] }""",
        """{ "study": "S-1", "subjects": [{ "structure": "biceps", "side": "left", "normal": "yes" }] }""",
        """{ "study": "S-1", "subjects": [{ "structure": "biceps", "side": "left", "findings": { "fluid": "bursal" } }] }""",
        """{ "study": "S-1", "subjects": [{ "structure": "biceps", "lesions": [{ "findings": {} }] }] }""",
        """{ "study": "S-1", "subjects": [{ "structure": "biceps", "lesions": [{ "id": "L1", "findings": { "fluid": "none" } }] }] }""",
        """{ "study": "S-1", "earlier": { "study": "S-0" } }""",
        Healing("2.5"),
        Healing("\"3 mm\""),
        Healing("""{ "value": "three" }"""),
        Finding("colour", "\"grey\""),
        Finding("fluid", """{ "from": "bursal" }"""),
        Finding("fluid", """{ "from": "bursal", "to": "deep" }"""),
        Finding("fluid", "[]"),
        Finding("fluid", "true"),
        Finding("thickness", "6.1"),
        Finding("thickness", "\"6.1\""),
        Finding("thickness", "\"6.1 mm2\""),
        Finding("thickness", "\"thick\""),
        Finding("thickness", """{ "value": 6.1 }"""),
        Finding("thickness", """{ "value": 6.1, "unit": "deg" }"""),
        Finding("thickness", """{ "value": 6.1, "unit": "mm", "comparator": "about" }"""),
        Finding("shadowing", "\"yes\""),
        Finding("echo", "\"dark\""),
        Finding("echo", "[\"anechoic\"]"),
    ];

    [Theory]
    [MemberData(nameof(Accepted))]
    public void What_the_reader_takes_is_valid(string json)
    {
        Assert.NotNull(ExampleStudies.Read(JsonNode.Parse(json)!, Example.Pack));
        Assert.Empty(Schema.Errors(JsonNode.Parse(json)));
    }

    [Theory]
    [MemberData(nameof(Refused))]
    public void What_the_reader_refuses_is_not(string json)
    {
        Assert.Null(ExampleStudies.Read(JsonNode.Parse(json)!, Example.Pack));
        Assert.NotEmpty(Schema.Errors(JsonNode.Parse(json)));
    }

    [Theory]
    [MemberData(nameof(Folders))]
    public void Every_study_of_a_pack_is_valid(string folder)
    {
        var schema = SchemaFile.From(StudySchema.Write(ExampleStudies.Load(folder).Pack));
        var studies = ExampleStudies.Of(folder).ToArray();

        Assert.NotEmpty(studies);
        Assert.All(studies, s => Assert.Empty(schema.Errors(s.Study)));
        Assert.All(studies, s => Assert.Empty(SchemaFile.Of("study").Errors(s.Study)));
    }

    [Fact]
    public void It_is_a_schema_that_says_what_is_meant()
    {
        var written = JsonNode.Parse(StudySchema.Write(Example.Pack))!;

        Assert.True(MetaSchemas.Draft202012.Evaluate(written).IsValid);
        Assert.Contains("What the dark area does", written["$defs"]!["findings-of-cuff-tendon"]!["properties"]!["reangled"]!["description"]!.ToString(), StringComparison.Ordinal);
        Assert.Contains("0.5 mm to 30 mm", written["$defs"]!["findings-of-cuff-tendon"]!["properties"]!["thickness"]!["description"]!.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_pack_gives_the_same_text() =>
        Assert.Equal(StudySchema.Write(Example.Pack), StudySchema.Write(Texts.Compile().Pack));

    private static string Healing(string value) =>
        $$"""{ "study": "S-1", "subjects": [{ "structure": "sternum", "findings": { "healing": {{value}} } }] }""";

    private static string Finding(string name, string value) =>
        $$"""{ "study": "S-1", "subjects": [{ "structure": "supraspinatus", "side": "right", "findings": { "{{name}}": {{value}} } }] }""";
}
