using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Json.Schema;
using Xunit;

namespace FindingRules.Tests.Schemas;

/// <summary>The schemas themselves: each is one, says what every member means, and lets nothing unknown pass.</summary>
public sealed class SchemaFormTests
{
    private static readonly ImmutableArray<string> Conditional = ["if", "then", "else", "not", "oneOf", "anyOf", "allOf", "dependentSchemas"];

    public static TheoryData<string> Names() => [.. SchemaFile.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void It_is_a_schema_of_the_draft_that_it_names(string name)
    {
        var results = MetaSchemas.Draft202012.Evaluate(SchemaFile.Of(name).Json, new EvaluationOptions { OutputFormat = OutputFormat.List });

        Assert.Equal("https://json-schema.org/draft/2020-12/schema", (string?)SchemaFile.Of(name).Json["$schema"]);
        Assert.True(results.IsValid);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_member_is_described(string name)
    {
        var silent =
            from part in Parts(SchemaFile.Of(name).Json, name)
            from member in part.Json["properties"]?.AsObject() ?? []
            where new SchemaWalk.Place(name, member.Value!.AsObject()).Find("description") is null
            select $"{part.Path}: {member.Key}";

        Assert.Empty(silent);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Nothing_unknown_passes(string name)
    {
        var open = Parts(SchemaFile.Of(name).Json, name)
            .Where(p => p.Json["properties"] is not null && p.Json["additionalProperties"]?.ToString() != "false")
            .Select(p => p.Path);

        Assert.Empty(open);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Examples_are_valid(string name)
    {
        var wrong =
            from part in Parts(SchemaFile.Of(name).Json, name)
            where part.Json["examples"] is not null
            let schema = SchemaFile.From(WithDefinitions(part.Json, name))
            from example in part.Json["examples"]!.AsArray()
            where schema.Errors(example).Length > 0
            select $"{part.Path}: {example}";

        Assert.Empty(wrong);
    }

    /// <summary>Every object of the schema that stands for something of a document; conditions only narrow one of these.</summary>
    private static IEnumerable<(string Path, JsonObject Json)> Parts(JsonNode? node, string path)
    {
        if (node is JsonObject json)
        {
            yield return (path, json);
            foreach (var (key, value) in json.Where(m => !Conditional.Contains(m.Key)))
                foreach (var part in Parts(value, $"{path}/{key}"))
                    yield return part;
        }
    }

    private static string WithDefinitions(JsonObject part, string name)
    {
        var alone = part.DeepClone().AsObject();
        if (SchemaFile.Of(name).Json["$defs"] is { } definitions && !alone.ContainsKey("$defs")) alone["$defs"] = definitions.DeepClone();
        return alone.ToJsonString();
    }
}
