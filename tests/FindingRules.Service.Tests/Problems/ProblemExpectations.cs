using System.Net;
using System.Text.Json.Nodes;
using Xunit;

namespace FindingRules.Service.Tests.Problems;

internal static class ProblemExpectations
{
    /// <summary>The answer is problem details with this status and code, in the form that every problem has.</summary>
    public static async Task<JsonNode> IsProblemAsync(this HttpResponseMessage answer, HttpStatusCode status, string code)
    {
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(status == answer.StatusCode, $"{answer.StatusCode}: {text}");
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        var problem = JsonNode.Parse(text)!;
        Assert.Equal(code, (string?)problem["code"]);
        Assert.Equal($"/v1/codes/{code}", (string?)problem["type"]);
        Assert.Equal((int)status, (int?)problem["status"]);
        Assert.NotEmpty((string)problem["title"]!);
        Assert.NotEmpty((string)problem["detail"]!);
        Assert.NotEmpty(problem["messages"]!.AsArray());
        return problem;
    }

    /// <summary>It also says that there is no reading.</summary>
    public static async Task<JsonNode> IsNoReadingAsync(this HttpResponseMessage answer, HttpStatusCode status, string code)
    {
        var problem = await answer.IsProblemAsync(status, code);
        Assert.Equal("No reading", (string?)problem["title"]);
        Assert.True(problem.AsObject().ContainsKey("reading"));
        Assert.Null(problem["reading"]);
        return problem;
    }

    public static IEnumerable<string> Codes(this JsonNode problem) => problem["messages"]!.AsArray().Select(m => (string)m!["code"]!);
}
