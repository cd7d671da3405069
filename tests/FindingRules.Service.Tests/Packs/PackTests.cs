using System.Net;
using System.Security.Cryptography;
using System.Text.Json.Nodes;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Service.Tests.Problems;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Service.Tests.Packs;

public sealed class PackTests : IAsyncLifetime
{
    private RunningService _service = null!;
    private string _digest = "";

    public async Task InitializeAsync()
    {
        _service = await RunningService.StartAsync();
        _digest = await _service.DigestInForceAsync();
    }

    public async Task DisposeAsync() => await _service.DisposeAsync();

    [Fact]
    public async Task What_is_in_force_is_listed_with_its_digests_and_counts()
    {
        var packs = await _service.GetJsonAsync("/v1/packs");
        var taken = Assert.Single(packs["inForce"]!.AsArray())!;
        var pack = taken["pack"]!;
        var direct = ExamplePack.Plain.Compile().Pack;
        Assert.Equal(("example", "1.0.0"), ((string)pack["name"]!, (string)pack["version"]!));
        Assert.Equal((direct.TextDigest, direct.MeaningDigest), ((string)pack["textDigest"]!, (string)pack["meaningDigest"]!));
        Assert.True((bool)pack["isDemonstration"]!);
        Assert.Equal(direct.Rules.Length, (int)pack["counts"]!["rules"]!);
        Assert.Equal(4, (int)pack["counts"]!["cases"]!);
        Assert.Equal("example", (string?)taken["folder"]);
        Assert.True(DateTimeOffset.Parse((string)taken["takenAt"]!, null) <= TimeProvider.System.GetUtcNow());
        Assert.Empty(packs["refused"]!.AsArray());
        Assert.Empty(packs["earlier"]!.AsArray());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_pack_is_found_by_name_and_by_digest(bool byName)
    {
        var found = await _service.GetJsonAsync($"/v1/packs/{(byName ? "example" : _digest)}");
        Assert.Equal(_digest, (string?)found["pack"]!["textDigest"]);
        Assert.Equal("CUFF-090", (string?)found["withdrawn"]![0]!["rule"]);
        Assert.Contains("not a diagnosis", (string?)found["notice"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_file_is_answered_byte_for_byte()
    {
        var found = await _service.GetJsonAsync($"/v1/packs/{_digest}");
        var files = found["files"]!.AsArray();
        Assert.Equal(ExamplePack.Plain.Files.Length, files.Count);
        foreach (var file in files)
        {
            var bytes = await _service.Client.GetByteArrayAsync((string)file!["url"]!);
            Assert.Equal(await File.ReadAllBytesAsync(_service.Disk.PathOf("example", (string)file["path"]!)), bytes);
            Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(bytes)), (string?)file["sha256"]);
            Assert.Equal(bytes.Length, (int)file["bytes"]!);
        }
    }

    [Fact]
    public async Task Every_rule_is_answered_as_its_author_wrote_it()
    {
        var lines = (await _service.GetJsonAsync($"/v1/packs/{_digest}"))["rules"]!.AsArray();
        Assert.Equal(ExamplePack.Plain.Compile().Pack.Rules.Length, lines.Count);
        foreach (var line in lines)
        {
            var rule = await _service.GetJsonAsync((string)line!["url"]!);
            Assert.Equal((string?)line["id"], (string?)rule["id"]);
            Assert.Equal((string?)line["revision"], (string?)rule["revision"]);
            Assert.NotEmpty((string)rule["because"]!);
            Assert.NotEmpty(rule["sources"]!.AsArray());
        }
    }

    [Fact]
    public async Task A_rule_says_where_it_stands_and_what_it_rests_on()
    {
        var rule = await _service.GetJsonAsync($"/v1/packs/{_digest}/rules/CUFF-010");
        Assert.Contains("fluid spans bursal to articular surface", (string?)rule["rule"], StringComparison.Ordinal);
        Assert.Equal("each cuff-tendon", (string?)rule["for"]);
        Assert.Equal(["CUFF-020", "CUFF-021"], rule["over"]!.AsArray().Select(o => (string)o!));
        Assert.Equal("F-RCT-01", (string?)rule["sources"]![0]!["facts"]![0]);
        Assert.Equal("secondary source read", (string?)rule["sources"]![0]!["status"]);
        Assert.Equal("2026-09-01", (string?)rule["reviewed"]);
        Assert.Equal("rules.yaml", (string?)rule["place"]!["file"]);
        var text = await _service.Client.GetStringAsync((string)rule["place"]!["url"]!);
        Assert.Contains("CUFF-010", text.Split('\n')[(int)rule["place"]!["line"]! - 1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_band_of_a_scale_is_a_rule_and_a_withdrawn_rule_says_so()
    {
        var band = await _service.GetJsonAsync("/v1/packs/example/rules/tear-size.medium");
        Assert.Equal("tear-size", (string?)band["scale"]);
        var withdrawn = await _service.GetJsonAsync("/v1/packs/example/rules/CUFF-090");
        Assert.Equal("2026-01-31", (string?)withdrawn["withdrawn"]!["on"]);
    }

    [Theory]
    [InlineData("/v1/packs/exampel", "FR7014")]
    [InlineData("/v1/packs/0000000000000000000000000000000000000000000000000000000000000000", "FR7014")]
    [InlineData("/v1/packs/exampel/rules/CUFF-010", "FR7014")]
    [InlineData("/v1/packs/exampel/files/rules.yaml", "FR7014")]
    [InlineData("/v1/packs/exampel/study-schema", "FR7014")]
    [InlineData("/v1/packs/example/rules/CUFF-011", "FR7016")]
    [InlineData("/v1/packs/example/files/rule.yaml", "FR7015")]
    [InlineData("/v1/packs/example/files/..%2F..%2Fpasswd", "FR7015")]
    [InlineData("/v1/packs/example/files/", "FR7015")]
    [InlineData("/v1/pack", "FR7001")]
    public async Task What_is_not_there_is_said_with_a_code(string address, string code)
    {
        using var answer = await _service.Client.GetAsync(address);
        await answer.IsProblemAsync(HttpStatusCode.NotFound, code);
    }

    [Theory]
    [InlineData("")]
    [InlineData("/files/rules.yaml")]
    [InlineData("/rules/CUFF-010")]
    [InlineData("/study-schema")]
    public async Task Under_a_digest_an_answer_may_be_kept_for_ever_and_under_a_name_it_must_be_asked_for_again(string rest)
    {
        using var byDigest = await _service.Client.GetAsync($"/v1/packs/{_digest}{rest}");
        Assert.Contains("immutable", byDigest.Headers.CacheControl!.ToString(), StringComparison.Ordinal);
        using var byName = await _service.Client.GetAsync($"/v1/packs/example{rest}");
        Assert.Equal("no-cache", byName.Headers.CacheControl!.ToString());
        using var again = new HttpRequestMessage(HttpMethod.Get, $"/v1/packs/example{rest}");
        again.Headers.IfNoneMatch.Add(byName.Headers.ETag!);
        using var same = await _service.Client.SendAsync(again);
        Assert.Equal(HttpStatusCode.NotModified, same.StatusCode);
        Assert.Empty(await same.Content.ReadAsByteArrayAsync());
    }

    [Fact]
    public async Task No_answer_shows_a_path_of_the_machine()
    {
        foreach (var address in new[] { "/v1/packs", "/v1/packs/example", "/v1/packs/example/rules/CUFF-010" })
            Assert.DoesNotContain(Path.GetTempPath(), await _service.Client.GetStringAsync(address), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_schema_of_a_study_knows_the_vocabulary_and_takes_what_the_service_takes()
    {
        var schema = Json.Schema.JsonSchema.FromText(await _service.Client.GetStringAsync("/v1/packs/example/study-schema"));
        Assert.True(schema.Evaluate(JsonNode.Parse(Studies.FullThickness)).IsValid);
        Assert.False(schema.Evaluate(JsonNode.Parse(Studies.Misspelt)).IsValid);
    }
}
