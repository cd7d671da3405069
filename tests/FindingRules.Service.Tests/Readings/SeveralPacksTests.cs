using System.Net;
using System.Text.Json.Nodes;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Service.Tests.Problems;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Service.Tests.Readings;

public sealed class SeveralPacksTests : IAsyncLifetime
{
    private RunningService _service = null!;

    public async Task InitializeAsync()
    {
        var disk = new PackDisk();
        disk.Write("one", ExamplePack.Plain);
        disk.WriteNamed("two", "other");
        _service = await RunningService.StartAsync(disk);
    }

    public async Task DisposeAsync() => await _service.DisposeAsync();

    [Fact]
    public async Task The_sender_must_choose()
    {
        using var answer = await _service.PostAsync(Studies.FullThickness);
        var problem = await answer.IsNoReadingAsync(HttpStatusCode.UnprocessableEntity, "FR7012");
        Assert.Contains("`example` or `other`", (string?)problem["detail"], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("example")]
    [InlineData("other")]
    public async Task The_study_or_the_address_chooses(string name)
    {
        foreach (var (study, address) in new[]
        {
            (Studies.FullThickness.Replace("{ \"study\"", $"{{ \"pack\": \"{name}\", \"study\"", StringComparison.Ordinal), "/v1/readings"),
            (Studies.FullThickness, $"/v1/readings?pack={name}"),
        })
        {
            using var answer = await _service.PostAsync(study, address);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.Equal(name, (string?)JsonNode.Parse(await answer.Content.ReadAsStringAsync())!["pack"]!["name"]);
        }
    }

    [Fact]
    public async Task Two_choices_are_one_too_many()
    {
        using var answer = await _service.PostAsync("{ \"study\": \"S-1\", \"pack\": \"other\" }", "/v1/readings?pack=example");
        var problem = await answer.IsNoReadingAsync(HttpStatusCode.UnprocessableEntity, "FR7013");
        Assert.Equal("/pack", (string?)problem["messages"]![0]!["pointer"]);
    }

    [Fact]
    public async Task What_is_not_JSON_is_said_without_a_choice()
    {
        using var answer = await _service.PostAsync("{ \"study\": ");
        await answer.IsNoReadingAsync(HttpStatusCode.BadRequest, "FR7005");
    }
}
