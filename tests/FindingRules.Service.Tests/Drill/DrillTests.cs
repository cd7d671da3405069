using System.Net;
using System.Text.Json.Nodes;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Service.Tests.Problems;
using Xunit;

namespace FindingRules.Service.Tests.Drill;

public sealed class DrillTests : IAsyncLifetime
{
    private const string Answers = "/v1/drill/answers";
    private RunningService _service = null!;

    public async Task InitializeAsync() => _service = await RunningService.StartAsync();

    public async Task DisposeAsync() => await _service.DisposeAsync();

    [Fact]
    public async Task Questions_come_without_answers_and_answers_are_judged()
    {
        var sheet = await _service.GetJsonAsync("/v1/drill/questions?seed=3&count=2");
        Assert.Null(sheet["answers"]);
        Assert.Contains("DEMONSTRATION", (string)sheet["notice"]!, StringComparison.Ordinal);
        var question = sheet["questions"]![0]!;
        var judged = new List<JsonNode>();
        for (var choice = 1; choice <= question["options"]!.AsArray().Count; choice++)
            judged.Add(await JudgeAsync($$"""{ "question": "{{question["id"]}}", "choice": {{choice}} }"""));
        Assert.Single(judged, j => (string)j["verdict"]! == "right");
        Assert.All(judged, j => Assert.NotEmpty(j["traces"]!.AsArray()));
        Assert.All(judged, j => Assert.Contains("DEMONSTRATION", (string)j["notice"]!, StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_same_seed_gives_the_same_bytes()
    {
        const string Address = "/v1/drill/questions?seed=3&pack=example";
        Assert.Equal(await _service.Client.GetStringAsync(Address), await _service.Client.GetStringAsync(Address));
    }

    [Theory]
    [InlineData("count=0", HttpStatusCode.BadRequest, "FR8106")]
    [InlineData("seed=x", HttpStatusCode.BadRequest, "FR8106")]
    [InlineData("learner=L-1", HttpStatusCode.BadRequest, "FR7007")]
    [InlineData("pack=other", HttpStatusCode.NotFound, "FR7011")]
    public async Task A_wrong_address_is_told(string query, HttpStatusCode status, string code) =>
        await (await _service.Client.GetAsync(new Uri($"/v1/drill/questions?{query}", UriKind.Relative))).IsProblemAsync(status, code);

    [Theory]
    [InlineData("""{ "question": "4", "choice": 1 }""", HttpStatusCode.NotFound, "FR8101")]
    [InlineData("""{ "question": "4", "choice": 1, "learner": "L-1" }""", HttpStatusCode.UnprocessableEntity, "FR8112")]
    [InlineData("""{ "choice": 1 }""", HttpStatusCode.UnprocessableEntity, "FR8112")]
    [InlineData("[]", HttpStatusCode.UnprocessableEntity, "FR8112")]
    public async Task A_wrong_answer_body_is_told(string body, HttpStatusCode status, string code) =>
        await (await _service.PostAsync(body, Answers)).IsProblemAsync(status, code);

    [Fact]
    public async Task An_option_or_a_letter_that_is_not_there_is_told()
    {
        var id = (string)(await _service.GetJsonAsync("/v1/drill/questions?seed=3&count=1"))["questions"]![0]!["id"]!;
        await (await _service.PostAsync($$"""{ "question": "{{id}}", "choice": 9 }""", Answers))
            .IsProblemAsync(HttpStatusCode.UnprocessableEntity, "FR8103");
        await (await _service.PostAsync($$"""{ "question": "{{id}}", "choice": 1, "deciding": ["zz"] }""", Answers))
            .IsProblemAsync(HttpStatusCode.UnprocessableEntity, "FR8104");
    }

    private async Task<JsonNode> JudgeAsync(string body)
    {
        var answer = await _service.PostAsync(body, Answers);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
    }
}
