using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using FindingRules.Service.Readings;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Testing;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace FindingRules.Service.Tests.OpenApi;

/// <summary>Each worked example of the description is what the service answers for the invented pack of the tests.</summary>
public sealed class ExampleTests
{
    [Theory]
    [InlineData("full-thickness", HttpStatusCode.OK)]
    [InlineData("nothing-abnormal", HttpStatusCode.OK)]
    [InlineData("two-mistakes", HttpStatusCode.UnprocessableEntity)]
    public async Task A_study_is_answered_as_the_example_says(string name, HttpStatusCode status)
    {
        await using var service = await RunningService.StartAsync();
        using var answer = await service.PostAsync(Examples.Read($"CreateReading.request.{name}.json"));
        Assert.Equal(status, answer.StatusCode);
        Examples.Match($"CreateReading.{(int)status}.{name}.json", await answer.Content.ReadAsStringAsync());
    }

    [Theory]
    [InlineData("/v1/readings", "application/json", "{ \"study\": ", "CreateReading.400.cut-short.json")]
    [InlineData("/v1/readings?pack=exampel", "application/json", "{ \"study\": \"S-7F3K\" }", "CreateReading.404.misspelt-pack.json")]
    [InlineData("/v1/readings", "text/plain", "{ \"study\": \"S-7F3K\" }", "CreateReading.415.plain-text.json")]
    public async Task A_request_that_cannot_be_taken_is_answered_as_the_example_says(string address, string type, string body, string name)
    {
        await using var service = await RunningService.StartAsync();
        using var answer = await service.PostAsync(Encoding.UTF8.GetBytes(body), type, address);
        Examples.Match(name, await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task A_study_that_is_too_large_is_answered_as_the_example_says()
    {
        await using var service = await RunningService.StartAsync(limits: RunningService.Quick with { StudyBytes = 1024 });
        using var answer = await service.PostAsync(new string(' ', 2048));
        Examples.Match("CreateReading.413.too-large.json", await answer.Content.ReadAsStringAsync());
    }

    [Theory]
    [InlineData("question=why&rule=CUFF-020&subject=right%20supraspinatus", "ExplainReading.200.why.json")]
    [InlineData("question=why-not&rule=CUFF-020&subject=right%20supraspinatus", "ExplainReading.200.why-not.json")]
    [InlineData("question=why&rule=CUFF-01", "ExplainReading.404.misspelt-rule.json")]
    public async Task A_question_is_answered_as_the_example_says(string query, string name)
    {
        await using var service = await RunningService.StartAsync();
        using var answer = await service.PostAsync(Examples.Read("ExplainReading.request.full-thickness.json"), $"/v1/readings/explain?{query}");
        Assert.Equal(name.Split('.')[1], $"{(int)answer.StatusCode}");
        Examples.Match(name, await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task A_batch_is_answered_as_the_example_says()
    {
        await using var service = await RunningService.StartAsync();
        var lines = Examples.Read("CreateReadings.request.one-good-one-wrong.ndjson");
        using var answer = await service.PostAsync(Encoding.UTF8.GetBytes(lines), "application/x-ndjson", "/v1/readings/batch");
        Examples.Match("CreateReadings.200.one-good-one-wrong.ndjson", await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task A_fault_is_answered_as_the_example_says()
    {
        await using var service = await RunningService.StartAsync(change: services =>
            services.AddSingleton<StudyEvaluation>((_, _, _) => throw new InvalidOperationException()));
        using var answer = await service.PostAsync(Studies.FullThickness);
        Examples.Match("CreateReading.500.fault.json", await answer.Content.ReadAsStringAsync());
    }

    [Theory]
    [InlineData("/v1/packs", "ListPacks.200.one-in-force.json")]
    [InlineData("/v1/packs/example", "GetPack.200.example.json")]
    [InlineData("/v1/packs/exampel", "GetPack.404.misspelt-pack.json")]
    [InlineData("/v1/packs/example/files/measures.yaml", "GetPackFile.200.measures.yaml")]
    [InlineData("/v1/packs/example/files/measure.yaml", "GetPackFile.404.misspelt-file.json")]
    [InlineData("/v1/packs/example/rules/CUFF-010", "GetPackRule.200.full-thickness.json")]
    [InlineData("/v1/packs/example/rules/CUFF-011", "GetPackRule.404.misspelt-rule.json")]
    [InlineData("/v1/packs/example/study-schema", "GetStudySchema.200.example.json")]
    [InlineData("/v1/packs/exampel/study-schema", "GetStudySchema.404.misspelt-pack.json")]
    [InlineData("/v1/codes/FR7010", "GetCode.200.no-pack-in-force.md")]
    [InlineData("/v1/codes/FR9999", "GetCode.404.never-given-out.json")]
    [InlineData("/healthz", "IsAlive.200.alive.json")]
    [InlineData("/readyz", "IsReady.200.ready.json")]
    public async Task What_is_asked_for_is_answered_as_the_example_says(string address, string name)
    {
        await using var service = await RunningService.StartAsync();
        using var answer = await service.Client.GetAsync(address);
        Assert.Equal(name.Split('.')[1], $"{(int)answer.StatusCode}");
        Examples.Match(name, await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task A_refused_folder_is_answered_as_the_example_says()
    {
        await using var service = await RunningService.StartAsync();
        service.Disk.Write("example", PackDisk.Broken());
        await service.UntilAsync(async () => (await service.GetJsonAsync("/v1/packs"))["refused"]!.AsArray().Count == 1);
        Examples.Match("ListPacks.200.one-refused.json", await service.Client.GetStringAsync("/v1/packs"));
    }

    [Fact]
    public async Task A_service_without_a_pack_answers_as_the_examples_say()
    {
        await using var service = await RunningService.StartAsync(new PackDisk(), mustBeReady: false);
        using var ready = await service.Client.GetAsync("/readyz");
        Examples.Match("IsReady.503.no-pack-in-force.json", await ready.Content.ReadAsStringAsync());
        using var reading = await service.PostAsync(Studies.FullThickness);
        Examples.Match("CreateReading.503.no-pack-in-force.json", await reading.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task The_list_of_codes_begins_as_the_example_says()
    {
        await using var service = await RunningService.StartAsync(new PackDisk(), mustBeReady: false);
        var codes = await service.GetJsonAsync("/v1/codes");
        var first = codes["codes"]!.AsArray().Take(2).Select(c => c!.DeepClone()).ToArray();
        Examples.Match("ListCodes.200.the-first-two.json", new JsonObject { ["codes"] = new JsonArray(first) }.ToJsonString());
    }

    [Fact]
    public void Every_example_is_tried()
    {
        var source = string.Concat(new[] { "ExampleTests.cs", "RecordExampleTests.cs" }
            .Select(f => Repository.ReadText("tests", "FindingRules.Service.Tests", "OpenApi", f)));
        var names = Examples.Names.ToArray();
        Assert.NotEmpty(names);
        Assert.All(names, n => Assert.True(
            source.Contains($"\"{n}\"", StringComparison.Ordinal)
            || (n.StartsWith("CreateReading.", StringComparison.Ordinal) && source.Contains($"\"{n.Split('.')[2]}\"", StringComparison.Ordinal)), n));
    }
}
