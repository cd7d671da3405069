using System.Text.Json.Nodes;

namespace FindingRules.Tests.Schemas;

/// <summary>Goes through a document and its schema side by side.</summary>
internal static class SchemaWalk
{
    /// <summary>The objects of the document whose members the schema lists: one for each such part of the schema.</summary>
    public static IEnumerable<(string Pointer, Place Schema)> Objects(string kind, JsonNode document) =>
        Walk(document, "", new Place(kind, SchemaFile.Of(kind).Json)).DistinctBy(o => o.Schema.Json);

    public static JsonNode At(JsonNode document, string pointer) =>
        pointer.Split('/').Skip(1).Aggregate(document, (node, step) => node is JsonArray list ? list[int.Parse(step)]! : node[step]!);

    /// <summary>A value that the member could have, whatever it says.</summary>
    public static JsonNode Sample(Place member)
    {
        var schema = member.Resolved.Json;
        if (member.Find("examples") is JsonArray examples) return examples[0]!.DeepClone();
        if (schema["const"] is { } constant) return constant.DeepClone();
        if (schema["enum"] is JsonArray words) return words[0]!.DeepClone();
        return (schema["type"] is JsonArray types ? (string?)types[0] : (string?)schema["type"]) switch
        {
            "boolean" => true,
            "integer" or "number" => 1,
            "array" => new JsonArray(Sample(member.Resolved.Below(schema["items"]!))),
            "object" => new JsonObject((schema["required"]?.AsArray() ?? []).Select(name =>
                KeyValuePair.Create((string)name!, (JsonNode?)Sample(member.Resolved.Below(schema["properties"]![(string)name!]!))))),
            _ => "words",
        };
    }

    private static IEnumerable<(string Pointer, Place Schema)> Walk(JsonNode? node, string pointer, Place place)
    {
        var schema = place.Resolved;
        if (node is JsonArray list && schema.Json["items"] is { } item)
            return list.SelectMany((n, i) => Walk(n, $"{pointer}/{i}", schema.Below(item)));
        if (node is not JsonObject members) return [];
        var inner = members.SelectMany(m => schema.Member(m.Key) is { } below ? Walk(m.Value, $"{pointer}/{m.Key}", below) : []);
        return schema.Json["properties"] is null ? inner : inner.Prepend((pointer, schema));
    }

    /// <summary>A part of a schema, and the file whose definitions it means.</summary>
    internal sealed record Place(string File, JsonObject Json)
    {
        public Place Resolved => (string?)Json["$ref"] is { } reference ? Target(reference).Resolved : this;

        public Place Below(JsonNode part) => new(File, part.AsObject());

        public Place? Member(string name) =>
            (Json["properties"]?[name] ?? Json["additionalProperties"] as JsonObject) is { } member ? Below(member) : null;

        /// <summary>What it says of itself, or else what it refers to does.</summary>
        public JsonNode? Find(string keyword) =>
            Json[keyword] ?? ((string?)Json["$ref"] is { } reference ? Target(reference).Find(keyword) : null);

        private Place Target(string reference)
        {
            var (file, path) = reference.Split('#') is [var before, var after] ? (before, after) : (reference, "");
            var name = file.Length == 0 ? File : file.Replace(".schema.json", "", StringComparison.Ordinal);
            return new Place(name, At(SchemaFile.Of(name).Json, path).AsObject());
        }
    }
}
