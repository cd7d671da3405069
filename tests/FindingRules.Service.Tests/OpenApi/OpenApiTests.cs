using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Testing;
using Microsoft.AspNetCore.Routing;
using Xunit;

namespace FindingRules.Service.Tests.OpenApi;

public sealed class OpenApiTests : IAsyncLifetime
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private RunningService _service = null!;
    private JsonNode _document = null!;

    public async Task InitializeAsync()
    {
        _service = await RunningService.StartAsync(new PackDisk(), mustBeReady: false);
        _document = await _service.GetJsonAsync("/openapi/v1.json");
    }

    public async Task DisposeAsync() => await _service.DisposeAsync();

    [Fact]
    public void The_description_is_the_one_that_was_agreed() =>
        Snapshot.Match(WithoutExampleValues(_document.DeepClone()).ToJsonString(Indented));

    [Fact]
    public void Every_route_of_the_service_is_described()
    {
        var declared = _service.Endpoints.OfType<RouteEndpoint>()
            .SelectMany(e => e.Metadata.GetMetadata<HttpMethodMetadata>()!.HttpMethods
                .Select(m => $"{m} /{e.RoutePattern.RawText!.Trim('/').Replace("{**", "{", StringComparison.Ordinal)}"))
            .Order(StringComparer.Ordinal).ToArray();
        Assert.True(declared.Length >= 10, string.Join('\n', declared));
        Assert.Equal(declared, Operations().Select(o => $"{o.Method.ToUpperInvariant()} {o.Path}").Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_operation_has_a_name_a_summary_and_a_tag()
    {
        foreach (var (_, path, operation) in Operations())
        {
            Assert.True(operation["operationId"] is not null, path);
            Assert.True(operation["summary"] is not null, path);
            Assert.Single(operation["tags"]!.AsArray());
        }
    }

    [Fact]
    public void Every_operation_shows_a_worked_answer()
    {
        var without = Operations()
            .Where(o => !HasExample(o.Operation["responses"]!["200"] ?? o.Operation["responses"]!["201"]))
            .Select(o => o.Path);
        Assert.Empty(without);
    }

    [Fact]
    public void Every_reference_leads_to_a_schema()
    {
        var schemas = _document["components"]!["schemas"]!.AsObject();
        var references = References(WithoutExampleValues(_document.DeepClone())).Distinct().ToArray();
        Assert.NotEmpty(references);
        Assert.All(references, r => Assert.True(schemas.ContainsKey(r[(r.LastIndexOf('/') + 1)..]), r));
    }

    [Fact]
    public void Every_schema_is_used()
    {
        var used = References(WithoutExampleValues(_document.DeepClone())).ToHashSet(StringComparer.Ordinal);
        var declared = _document["components"]!["schemas"]!.AsObject().Select(s => $"#/components/schemas/{s.Key}");
        Assert.All(declared, s => Assert.True(used.Contains(s), s));
    }

    [Fact]
    public void A_study_and_a_reading_are_described_as_their_schemas_describe_them()
    {
        var operation = _document["paths"]!["/v1/readings"]!["post"]!;
        var study = operation["requestBody"]!["content"]!["application/json"]!["schema"]!["$ref"];
        var reading = operation["responses"]!["200"]!["content"]!["application/json"]!["schema"]!["$ref"];
        Assert.Equal(("#/components/schemas/Study", "#/components/schemas/Reading"), ((string)study!, (string)reading!));
        var schema = JsonNode.Parse(Repository.ReadText("schemas", "reading.schema.json"))!;
        var described = _document["components"]!["schemas"]!["Reading"]!;
        Assert.Equal(
            schema["properties"]!.AsObject().Select(p => p.Key).Order(StringComparer.Ordinal),
            described["properties"]!.AsObject().Select(p => p.Key).Order(StringComparer.Ordinal));
        Assert.Equal(schema["required"]!.AsArray().Count, described["required"]!.AsArray().Count);
    }

    [Fact]
    public void The_description_carries_the_standing_notice() =>
        Assert.Contains(FindingRules.Model.Packs.Pack.StandingNotice, (string)_document["info"]!["description"]!, StringComparison.Ordinal);

    [Fact]
    public async Task The_page_and_all_that_it_loads_come_from_the_service()
    {
        var page = await _service.Client.GetStringAsync("/index.html");
        Assert.Contains("FindingRules", page, StringComparison.Ordinal);
        Assert.DoesNotMatch("(src|href)=\"https?:", page);
        Assert.DoesNotMatch("<script[^>]*>[^<]", page);
    }

    private static bool HasExample(JsonNode? place) =>
        place?["content"]?.AsObject().All(c => c.Value!["examples"]?.AsObject().Count > 0) == true;

    private IEnumerable<(string Method, string Path, JsonNode Operation)> Operations() => _document["paths"]!.AsObject()
        .SelectMany(p => p.Value!.AsObject().Select(o => (o.Key, p.Key, o.Value!)));

    // The examples are held against the service itself, so that the agreed description changes with the interface only.
    private static JsonNode WithoutExampleValues(JsonNode node)
    {
        if (node is JsonObject { Count: > 0 } members)
            foreach (var (name, member) in members.ToArray())
                if (name == "examples" && member is JsonObject examples)
                    foreach (var (_, example) in examples) example!.AsObject().Remove("value");
                else if (member is not null) WithoutExampleValues(member);
        if (node is JsonArray items)
            foreach (var item in items.OfType<JsonNode>()) WithoutExampleValues(item);
        return node;
    }

    private static IEnumerable<string> References(JsonNode? node) => node switch
    {
        JsonObject members => members.SelectMany(m => m is { Key: "$ref", Value: JsonValue } ? [(string)m.Value!] : References(m.Value)),
        JsonArray items => items.SelectMany(References),
        _ => [],
    };
}
