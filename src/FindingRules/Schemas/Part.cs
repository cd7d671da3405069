using System.Text.Json.Nodes;

namespace FindingRules.Schemas;

/// <summary>The few forms of JSON Schema that a study's schema is put together from.</summary>
internal static class Part
{
    public static JsonObject Object(string description, JsonObject properties, params string[] required)
    {
        var part = new JsonObject { ["description"] = description, ["type"] = "object" };
        if (required.Length > 0) part["required"] = Strings(required);
        part["properties"] = properties;
        part["additionalProperties"] = false;
        return part;
    }

    /// <summary>An object whose members are said elsewhere.</summary>
    public static JsonObject Any(string description) => new() { ["description"] = description, ["type"] = "object" };

    public static JsonObject List(string description, JsonNode item) =>
        new() { ["description"] = description, ["type"] = "array", ["items"] = item };

    public static JsonObject Text(string description, string pattern) =>
        new() { ["description"] = description, ["type"] = "string", ["pattern"] = pattern };

    public static JsonObject Flag(string description) => new() { ["description"] = description, ["type"] = "boolean" };

    public static JsonObject Words(string description, IEnumerable<string> words) =>
        new() { ["description"] = description, ["enum"] = Strings(words) };

    public static JsonObject Const(string value, string description) =>
        new() { ["const"] = value, ["description"] = description };

    /// <summary>One of several names, each with what it stands for.</summary>
    public static JsonObject OneOf(string description, IEnumerable<(string Name, string Title)> names) => new()
    {
        ["description"] = description,
        ["oneOf"] = new JsonArray([.. names.Select(n => Const(n.Name, n.Title))]),
    };

    /// <summary>The sides of something that there is two of, or one.</summary>
    public static JsonObject Sides(bool isPaired) =>
        new() { ["enum"] = isPaired ? Strings(["left", "right"]) : Strings(["midline"]) };

    /// <summary>Where the member is one of the words, these properties hold as well.</summary>
    public static JsonObject When(string member, IEnumerable<string> words, JsonObject properties) => new()
    {
        ["if"] = new JsonObject
        {
            ["properties"] = new JsonObject { [member] = new JsonObject { ["enum"] = Strings(words) } },
            ["required"] = Strings([member]),
        },
        ["then"] = new JsonObject { ["properties"] = properties },
    };

    public static JsonObject Reference(string definition) => new() { ["$ref"] = $"#/$defs/{definition}" };

    public static JsonArray Strings(IEnumerable<string> words) => [.. words.Select(w => JsonValue.Create(w))];
}
