using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using FindingRules.Model.Text;
using FindingRules.Output;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Service.Tests.Readings;

public sealed class ReadingTests : IAsyncLifetime
{
    private RunningService _service = null!;

    public async Task InitializeAsync() => _service = await RunningService.StartAsync();

    public async Task DisposeAsync() => await _service.DisposeAsync();

    [Fact]
    public async Task A_study_is_read_and_each_suggestion_names_its_rules()
    {
        using var answer = await _service.PostAsync(Studies.FullThickness);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/json", answer.Content.Headers.ContentType?.MediaType);
        var reading = JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
        Assert.Equal("S-7F3K", (string?)reading["study"]);
        var tear = reading["suggestions"]!.AsArray().Single(s => (string?)s!["topic"] == "tear-depth")!;
        Assert.Equal("full-thickness", (string?)tear["value"]);
        Assert.Equal("CUFF-010", (string?)tear["rules"]![0]!["id"]);
        Assert.Contains(reading["nextSteps"]!.AsArray(), s => (string?)s!["step"] == "evaluate right subscapularis");
    }

    [Fact]
    public async Task A_reading_names_its_pack_and_carries_the_notice_and_the_word_demonstration()
    {
        using var answer = await _service.PostAsync(Studies.FullThickness);
        var reading = JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
        Assert.Equal(await _service.DigestInForceAsync(), (string?)reading["pack"]!["textDigest"]);
        Assert.True((bool?)reading["pack"]!["isDemonstration"]);
        Assert.Contains("not a diagnosis", (string?)reading["notice"], StringComparison.Ordinal);
        Assert.Contains("DEMONSTRATION", (string?)reading["impressionText"], StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task A_reading_is_the_one_of_the_front_door_byte_for_byte()
    {
        using var answer = await _service.PostAsync(Studies.FullThickness);
        var direct = ExamplePack.Plain.Compile().Read(new SourceText("request", Studies.FullThickness));
        Assert.Equal(ReadingJson.ToBytes(direct.Reading!).ToArray(), await answer.Content.ReadAsByteArrayAsync());
    }

    [Fact]
    public async Task A_reading_is_not_kept_by_anybody_on_the_way()
    {
        using var answer = await _service.PostAsync(Studies.FullThickness);
        Assert.True(answer.Headers.CacheControl?.NoStore);
    }

    [Fact]
    public async Task A_byte_order_mark_and_a_charset_are_taken()
    {
        byte[] body = [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Studies.FullThickness)];
        using var answer = await _service.PostAsync(body, "application/json; charset=UTF-8");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Theory]
    [InlineData("example")]
    [InlineData(null)]
    public async Task The_only_pack_may_be_named_or_left_out(string? name)
    {
        using var answer = await _service.PostAsync(Studies.FullThickness, name is null ? "/v1/readings" : $"/v1/readings?pack={name}");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Fact]
    public async Task A_pack_may_be_named_by_the_digest_of_its_text()
    {
        using var answer = await _service.PostAsync(Studies.FullThickness, $"/v1/readings?pack={await _service.DigestInForceAsync()}");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Fact]
    public async Task The_reading_fits_its_schema()
    {
        using var answer = await _service.PostAsync(Studies.FullThickness);
        var schemas = Json.Schema.SchemaRegistry.Global;
        schemas.Register(new Uri("https://example.org/schemas/common.schema.json"), Schema("common"));
        var options = new Json.Schema.EvaluationOptions { OutputFormat = Json.Schema.OutputFormat.List };
        var schema = Json.Schema.JsonSchema.FromText(
            Repository.ReadText("schemas", "reading.schema.json")
                .Replace("common.schema.json#", "https://example.org/schemas/common.schema.json#", StringComparison.Ordinal));
        var result = schema.Evaluate(JsonNode.Parse(await answer.Content.ReadAsStringAsync()), options);
        Assert.True(result.IsValid, string.Join('\n', result.Details.Where(d => d.HasErrors).Select(d => $"{d.InstanceLocation}: {string.Join(", ", d.Errors!.Values)}")));
    }

    private static Json.Schema.JsonSchema Schema(string name) =>
        Json.Schema.JsonSchema.FromText(Repository.ReadText("schemas", $"{name}.schema.json"));
}
