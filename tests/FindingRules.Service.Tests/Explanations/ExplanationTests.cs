using System.Net;
using System.Text.Json.Nodes;
using FindingRules.Explaining;
using FindingRules.Model.Text;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Service.Tests.Explanations;

public sealed class ExplanationTests : IAsyncLifetime
{
    private const string Address = "/v1/readings/explain";
    private RunningService _service = null!;

    public async Task InitializeAsync() => _service = await RunningService.StartAsync();

    public async Task DisposeAsync() => await _service.DisposeAsync();

    [Theory]
    [InlineData("", QuestionSort.Trace, null, null)]
    [InlineData("?question=trace", QuestionSort.Trace, null, null)]
    [InlineData("?rule=CUFF-010", QuestionSort.Why, "CUFF-010", null)]
    [InlineData("?question=why-not&rule=CUFF-020&subject=right%20supraspinatus", QuestionSort.WhyNot, "CUFF-020", "right supraspinatus")]
    [InlineData("?question=what-if&pack=example", QuestionSort.WhatIf, null, null)]
    [InlineData("?question=ask-next", QuestionSort.AskNext, null, null)]
    public async Task A_question_is_answered_as_the_front_door_answers_it(string query, QuestionSort sort, string? rule, string? subject)
    {
        using var answer = await _service.PostAsync(Studies.FullThickness, Address + query);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.True(answer.Headers.CacheControl?.NoStore);
        var direct = ExamplePack.Plain.Compile().Explain(new SourceText("request", Studies.FullThickness), new Question(sort, rule, subject));
        Assert.Equal(ExplanationJson.ToBytes(direct.Explanation!).ToArray(), await answer.Content.ReadAsByteArrayAsync());
    }

    [Theory]
    [InlineData("?rule=CUFF-01", HttpStatusCode.NotFound, "FR8001")]
    [InlineData("?rule=CUFF-090", HttpStatusCode.NotFound, "FR8002")]
    [InlineData("?rule=CUFF-010&subject=left%20supraspinatus", HttpStatusCode.NotFound, "FR8003")]
    [InlineData("?rule=CUFF-010&subject=study", HttpStatusCode.NotFound, "FR8003")]
    [InlineData("?question=why", HttpStatusCode.BadRequest, "FR8005")]
    [InlineData("?question=what-if&rule=CUFF-010", HttpStatusCode.BadRequest, "FR8006")]
    [InlineData("?question=whynot&rule=CUFF-010", HttpStatusCode.BadRequest, "FR8008")]
    [InlineData("?qestion=why", HttpStatusCode.BadRequest, "FR7007")]
    [InlineData("?pack=exampel", HttpStatusCode.NotFound, "FR7011")]
    public async Task A_question_that_cannot_be_answered_is_a_problem_with_its_code(string query, HttpStatusCode status, string code)
    {
        using var answer = await _service.PostAsync(Studies.FullThickness, Address + query);
        Assert.Equal(status, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        var problem = JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
        Assert.Equal((code, code), ((string?)problem["code"], (string?)problem["messages"]![0]!["code"]));
    }

    [Theory]
    [InlineData("{ \"study\": ", HttpStatusCode.BadRequest)]
    [InlineData("{ \"study\": \"S-1\", \"subjects\": [{ \"structure\": \"supraspinatu\" }] }", HttpStatusCode.UnprocessableEntity)]
    public async Task A_study_that_is_wrong_is_told_as_for_a_reading(string study, HttpStatusCode status)
    {
        using var explained = await _service.PostAsync(study, Address);
        using var read = await _service.PostAsync(study);
        Assert.Equal((status, status), (explained.StatusCode, read.StatusCode));
        var (problem, other) = (await Codes(explained), await Codes(read));
        Assert.Equal(other, problem);
    }

    private static async Task<string?> Codes(HttpResponseMessage answer)
    {
        var problem = JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
        return $"{problem["code"]} {string.Join(' ', problem["messages"]!.AsArray().Select(m => m!["code"]))}";
    }
}
