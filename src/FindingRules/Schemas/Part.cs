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

    public static JsonObject List(string description, JsonNode item) =>
        new() { ["description"] = description, ["type"] = "array", ["items"] = item };

    public static JsonObject Text(string description, string pattern) =>
        new() { ["description"] = description, ["type"] = "string", ["pattern"] = pattern };

    public static JsonObject Flag(string description) => new() { ["description"] = description, ["type"] = "boolean" };

    public static JsonObject Words(string description, IEnumerable<string> words) =>
        new() { ["description"] = description, ["enum"] = Strings(words) };

    public static JsonObject Const(string value, string description) =>
        new() { ["const"] = value, ["description"] = description };

    public static JsonObject Reference(string definition) => new() { ["$ref"] = $"#/$defs/{definition}" };

    public static JsonArray Strings(IEnumerable<string> words) => [.. words.Select(w => JsonValue.Create(w))];
}
