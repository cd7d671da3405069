using System.Text.Json.Nodes;
using FindingRules.Model.Messages;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Schemas;

/// <summary>
/// The schemas and the pack reader know the same keys: at each object of the example pack's files a key that the schema
/// lists is one that the reader takes, one that it can do without is one that the reader does not miss, and no other is taken.
/// </summary>
public sealed class SchemaKeyTests
{
    private static readonly string[] UnknownKey = ["FR1102", "FR5004"];
    private static readonly string[] MissingKey = ["FR1101", "FR5007"];

    /// <summary>Kind of file · JSON Pointer to an object.</summary>
    public static TheoryData<string, string> Objects()
    {
        var data = new TheoryData<string, string>();
        foreach (var kind in ExamplePack.Kinds.Append("pack"))
            foreach (var (pointer, _) in SchemaWalk.Objects(kind, Read(kind)))
                data.Add(kind, pointer);
        return data;
    }

    [Theory]
    [MemberData(nameof(Objects))]
    public void A_key_of_the_schema_is_one_that_the_reader_knows(string kind, string pointer)
    {
        var schema = SchemaOf(kind, pointer);
        foreach (var (key, _) in schema.Json["properties"]!.AsObject())
        {
            var document = Read(kind);
            if (!SchemaWalk.At(document, pointer).AsObject().TryAdd(key, SchemaWalk.Sample(schema.Member(key)!))) continue;
            if (SchemaFile.Of(kind).Errors(document).Length > 0) continue;

            Assert.True(!CodesOf(kind, document).Intersect(UnknownKey).Any(), $"the reader does not know `{key}`");
        }
    }

    [Theory]
    [MemberData(nameof(Objects))]
    public void A_key_that_the_schema_can_do_without_is_not_missed(string kind, string pointer)
    {
        foreach (var key in SchemaWalk.At(Read(kind), pointer).AsObject().Select(m => m.Key))
        {
            var document = Read(kind);
            SchemaWalk.At(document, pointer).AsObject().Remove(key);
            var isNeeded = SchemaFile.Of(kind).Errors(document).Length > 0;
            var codes = CodesOf(kind, document);

            Assert.True(isNeeded ? codes.Length > 0 : !codes.Intersect(MissingKey).Any(), $"the schema and the reader differ on whether `{key}` is needed");
        }
    }

    [Theory]
    [MemberData(nameof(Objects))]
    public void Another_key_is_refused_by_both(string kind, string pointer)
    {
        var document = Read(kind);
        SchemaWalk.At(document, pointer).AsObject()["colour-of-gel"] = "blue";

        Assert.NotEmpty(SchemaFile.Of(kind).Errors(document));
        Assert.Contains(CodesOf(kind, document), UnknownKey.Contains);
    }

    private static SchemaWalk.Place SchemaOf(string kind, string pointer) =>
        SchemaWalk.Objects(kind, Read(kind)).Single(o => o.Pointer == pointer).Schema;

    private static JsonNode Read(string kind) => YamlAsJson.Read(ExamplePack.Plain.TextOf(kind))!;

    /// <summary>The codes of the errors that the example pack has with this file in place of its own; JSON is YAML as well.</summary>
    private static string[] CodesOf(string kind, JsonNode document) =>
    [
        .. ExamplePack.Plain.Replace(kind, $"{document.ToJsonString()}\n...\n").Load().Messages
            .Where(m => m.Severity == Severity.Error)
            .Select(m => m.Code),
    ];
}
