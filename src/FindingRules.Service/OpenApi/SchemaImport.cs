using System.Text;
using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace FindingRules.Service.OpenApi;

/// <summary>
/// Puts the repository's own schemas of studies, readings, messages and problems into the description, so that there is
/// one account of each.
/// </summary>
internal sealed class SchemaImport : IDocumentFilter
{
    public const string Study = "Study";
    public const string Reading = "Reading";
    public const string Explanation = "Explanation";
    public const string Problem = "ProblemDetails";
    public const string Message = "Message";

    private const string Definitions = "$defs";

    // Hints for editors, of no use to a client.
    private static readonly string[] ForEditors =
        ["$schema", "patternErrorMessage", "defaultSnippets", "errorMessage", "markdownDescription"];

    // A message is written in its own way, and what it is made of in the code is nobody's concern.
    private static readonly string[] PartsOfMessage =
        ["Fix", "LinePosition", "Location", "RelatedPlace", "Severity", "SourceText", "TextSpan"];

    private static readonly JsonObject All = Needed(ReadAll(), [Study, Reading, Explanation, Problem, Message]);

    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context)
    {
        var generated = swaggerDoc.Components?.Schemas ?? new Dictionary<string, IOpenApiSchema>();
        var schemas = new SortedDictionary<string, IOpenApiSchema>(generated, StringComparer.Ordinal);
        foreach (var part in PartsOfMessage) schemas.Remove(part);
        foreach (var (name, schema) in Parsed()) schemas[name] = schema;
        swaggerDoc.Components ??= new OpenApiComponents();
        swaggerDoc.Components.Schemas = schemas;
    }

    private static IDictionary<string, IOpenApiSchema> Parsed()
    {
        var document = new JsonObject
        {
            ["openapi"] = "3.1.1",
            ["info"] = new JsonObject { ["title"] = "schemas", ["version"] = "1" },
            ["paths"] = new JsonObject(),
            ["components"] = new JsonObject { ["schemas"] = All.DeepClone() },
        };
        var read = OpenApiDocument.Parse(document.ToJsonString(), OpenApiConstants.Json);
        return read.Document?.Components?.Schemas
            ?? throw new InvalidOperationException("the schemas could not be taken into the description");
    }

    private static JsonObject ReadAll()
    {
        var all = new JsonObject();
        AddFile(all, "common", "Common");
        AddFile(all, "study", Study);
        AddFile(all, "reading", Reading);
        AddFile(all, "trace", Explanation);
        AddFile(all, "interface", "Interface");
        foreach (var (from, to) in new[] { ("InterfaceProblem", Problem), ("InterfaceMessage", Message) })
        {
            var schema = all[from]!;
            all.Remove(from);
            all[to] = schema;
        }
        return all;
    }

    /// <summary>What the named schemas lead to; the rest describes pack files.</summary>
    private static JsonObject Needed(JsonObject all, IEnumerable<string> names)
    {
        var needed = new JsonObject();
        var open = new Stack<string>(names);
        while (open.TryPop(out var name))
            if (!needed.ContainsKey(name))
            {
                needed[name] = all[name]!.DeepClone();
                foreach (var next in References(all[name]!)) open.Push(next);
            }
        return needed;
    }

    private static IEnumerable<string> References(JsonNode node) => node switch
    {
        JsonObject members => members.SelectMany(m => m is { Key: "$ref", Value: JsonValue }
            ? [m.Value!.GetValue<string>()[(m.Value!.GetValue<string>().LastIndexOf('/') + 1)..]]
            : m.Value is null ? [] : References(m.Value)),
        JsonArray items => items.OfType<JsonNode>().SelectMany(References),
        _ => [],
    };

    private static void AddFile(JsonObject all, string file, string prefix)
    {
        var root = JsonNode.Parse(ReadText($"{file}.schema.json"))!.AsObject();
        var definitions = root[Definitions]!.AsObject();
        root.Remove(Definitions);
        if (root.ContainsKey("type")) all[prefix] = Rewrite(root, prefix);
        foreach (var (name, schema) in definitions) all[prefix + Capital(name)] = Rewrite(schema!, prefix);
    }

    private static JsonNode Rewrite(JsonNode node, string prefix)
    {
        switch (node)
        {
            case JsonObject members:
                var rewritten = new JsonObject();
                foreach (var (name, value) in members)
                    if (name == "$ref") rewritten[name] = Target(value!.GetValue<string>(), prefix);
                    else if (!ForEditors.Contains(name)) rewritten[name] = value is null ? null : Rewrite(value, prefix);
                return rewritten;
            case JsonArray items:
                return new JsonArray([.. items.Select(i => i is null ? null : Rewrite(i, prefix))]);
            default:
                return node.DeepClone();
        }
    }

    private static string Target(string reference, string prefix)
    {
        var name = reference[(reference.LastIndexOf('/') + 1)..];
        var owner = reference.StartsWith('#') ? prefix : Capital(reference[..reference.IndexOf('.')]);
        return "#/components/schemas/" + (owner + Capital(name)) switch
        {
            "InterfaceMessage" => Message,
            var other => other,
        };
    }

    internal static string ReadText(string resource)
    {
        using var stream = typeof(SchemaImport).Assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"{resource} is not part of the assembly");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    private static string Capital(string name) => char.ToUpperInvariant(name[0]) + name[1..];
}
