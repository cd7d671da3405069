using System.Text.Json.Nodes;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Schemas;

/// <summary>A real file with one thing broken in it is refused: a key nobody knows, a key that is missing, a wrong type.</summary>
public sealed class BrokenTwinTests
{
    private static readonly Twin[] Twins =
    [
        new("pack", "", "department", "version", "1.0"),
        new("pack", "/withdrawn/0", "because", "on", "2026"),
        new("pack", "/files/0", "entries", "entries", "\"fifteen\""),
        new("vocabulary", "/structures/biceps", "kind", "paired", "\"yes\""),
        new("vocabulary", "/kinds/tendon/findings/thickness", "plausible", "measure", "\"inch\""),
        new("vocabulary", "/kinds/tendon/findings/echo", "choose", "choose", "\"fibrillar\""),
        new("vocabulary", "/study/trauma", "sign", "sign", "\"yes\""),
        new("references", "/references/cofield-size", "cites", "status", "\"read\""),
        new("topics", "/topics/tear-depth", "for", "answers", "true"),
        new("topics", "/topics/tear-depth/values/full-thickness/code", "system", "value", "202843000"),
        new("next-steps", "/next-steps/ultrasound", "says", "urgency", "\"later\""),
        new("next-steps", "/evaluate/subscapularis", "completed-by", "completed-by", "\"fluid\""),
        new("cautions", "/cautions/position-overestimates", "says", "source", "\"trade\""),
        new("measures", "/measures/depth-share", "is", "for", "\"cuff-tendon\""),
        new("scales", "/scales/tear-size", "bands", "bands", "{\"small\": \"below 1 cm\"}"),
        new("scales", "/scales/tear-size/bands/0", "small", "small", "\"under 1 cm\""),
        new("rules", "/rules/0", "because", "over", "\"CUFF-020\""),
        new("rules", "/rules/0", "rule", "rule", "\"fluid reaches bursal\""),
        new("protocols", "/protocols/shoulder", "requires", "calm", "[]"),
        new("cases", "/cases/0", "expect", "about", "3"),
        new("cases", "/cases/0/study/subjects/0", "structure", "side", "\"both\""),
    ];

    public static TheoryData<string, string> Entries() => Pairs(Twins.Select(t => (t.Kind, t.At)));

    public static TheoryData<string, string> NeededKeys() => Pairs(Twins.Select(t => (t.Kind, $"{t.At}/{t.Needed}")));

    public static TheoryData<string, string, string> WrongTypes()
    {
        var data = new TheoryData<string, string, string>();
        foreach (var twin in Twins) data.Add(twin.Kind, $"{twin.At}/{twin.Typed}", twin.Wrong);
        return data;
    }

    [Theory]
    [MemberData(nameof(Entries))]
    public void An_unknown_key_is_refused(string kind, string entry)
    {
        var document = ReadExample(kind);
        EntryAt(document, entry)["colour-of-gel"] = "blue";

        Assert.NotEmpty(SchemaFile.Of(kind).Errors(document));
    }

    [Theory]
    [MemberData(nameof(NeededKeys))]
    public void A_missing_key_is_refused(string kind, string key)
    {
        var document = ReadExample(kind);
        var (entry, name) = Split(key);

        Assert.True(EntryAt(document, entry).Remove(name));
        Assert.NotEmpty(SchemaFile.Of(kind).Errors(document));
    }

    [Theory]
    [MemberData(nameof(WrongTypes))]
    public void A_value_of_another_type_is_refused(string kind, string key, string wrong)
    {
        var document = ReadExample(kind);
        var (entry, name) = Split(key);

        Assert.True(EntryAt(document, entry).ContainsKey(name));
        EntryAt(document, entry)[name] = JsonNode.Parse(wrong);
        Assert.NotEmpty(SchemaFile.Of(kind).Errors(document));
    }

    [Fact]
    public void Every_kind_of_file_has_a_broken_twin() =>
        Assert.Equal(
            ExamplePack.Kinds.Append("pack").Order(StringComparer.Ordinal),
            Twins.Select(t => t.Kind).Distinct().Order(StringComparer.Ordinal));

    private static TheoryData<string, string> Pairs(IEnumerable<(string Kind, string Place)> places)
    {
        var data = new TheoryData<string, string>();
        foreach (var (kind, place) in places.Distinct()) data.Add(kind, place);
        return data;
    }

    private static (string Entry, string Key) Split(string pointer) =>
        (pointer[..pointer.LastIndexOf('/')], pointer[(pointer.LastIndexOf('/') + 1)..]);

    private static JsonNode ReadExample(string kind) => YamlAsJson.Read(ExamplePack.Plain.TextOf(kind))!;

    private static JsonObject EntryAt(JsonNode document, string pointer)
    {
        var node = document;
        foreach (var step in pointer.Split('/').Skip(1))
            node = node is JsonArray list ? list[int.Parse(step)]! : node[step]!;
        return node.AsObject();
    }

    /// <param name="At">JSON Pointer to an entry of the example pack's file of this kind.</param>
    /// <param name="Needed">A member that the entry cannot do without.</param>
    /// <param name="Typed">A member that cannot be <paramref name="Wrong"/>.</param>
    private sealed record Twin(string Kind, string At, string Needed, string Typed, string Wrong);
}
