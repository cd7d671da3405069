using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace FindingRules.Service.OpenApi;

/// <summary>
/// Puts worked examples into the description: <c>CreateReading.request.full-thickness.json</c> is a request to that
/// operation, <c>CreateReading.200.full-thickness.json</c> an answer. They are what the service answers for the
/// invented pack of the tests, and a test asks it again.
/// </summary>
internal sealed class ExampleFilter : IOperationFilter
{
    private const string Folder = "Examples.";
    private static readonly string[] Names = [.. typeof(ExampleFilter).Assembly.GetManifestResourceNames()
        .Where(n => n.StartsWith(Folder, StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        foreach (var name in Names)
        {
            var parts = name[Folder.Length..].Split('.');
            if (parts[0] != operation.OperationId) continue;
            if (ContentFor(operation, parts[1]) is not { } content) continue;
            foreach (var (_, media) in content)
            {
                var examples = media.Examples ??= new Dictionary<string, IOpenApiExample>();
                examples[parts[2]] = new OpenApiExample { Summary = $"{parts[2].Replace('-', ' ')} (invented)", Value = ReadExample(name) };
            }
        }
    }

    private static IDictionary<string, OpenApiMediaType>? ContentFor(OpenApiOperation operation, string place)
    {
        if (place == "request") return AsMedia(operation.RequestBody?.Content);
        return operation.Responses is { } responses && responses.TryGetValue(place, out var response) ? AsMedia(response.Content) : null;
    }

    private static IDictionary<string, OpenApiMediaType>? AsMedia<T>(IDictionary<string, T>? content) =>
        content?.Where(c => c.Value is OpenApiMediaType).ToDictionary(c => c.Key, c => (c.Value as OpenApiMediaType)!);

    private static JsonNode ReadExample(string name)
    {
        var text = SchemaImport.ReadText(name);
        return name.EndsWith(".json", StringComparison.Ordinal) ? JsonNode.Parse(text)! : JsonValue.Create(text)!;
    }
}
