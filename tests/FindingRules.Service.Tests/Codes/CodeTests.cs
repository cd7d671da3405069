using System.Net;
using FindingRules.Model.Messages;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Service.Tests.Problems;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Service.Tests.Codes;

public sealed class CodeTests : IAsyncLifetime
{
    private RunningService _service = null!;

    public async Task InitializeAsync() => _service = await RunningService.StartAsync(new PackDisk(), mustBeReady: false);

    public async Task DisposeAsync() => await _service.DisposeAsync();

    [Fact]
    public async Task Every_code_is_listed_and_its_page_is_answered()
    {
        var listed = (await _service.GetJsonAsync("/v1/codes"))["codes"]!.AsArray();
        Assert.Equal(MessagePages.Codes, listed.Select(c => (string)c!["code"]!));
        foreach (var code in listed)
            Assert.StartsWith($"# {code!["code"]} ", await _service.Client.GetStringAsync((string)code["url"]!), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Every_code_of_the_service_is_called_forth_by_a_test()
    {
        var tests = string.Concat(Repository.Files("tests/FindingRules.Service.Tests", "*.cs").Select(File.ReadAllText));
        var codes = MessagePages.Codes.Where(c => c.StartsWith("FR7", StringComparison.Ordinal)).ToArray();
        Assert.True(codes.Length > 20, $"{codes.Length} codes");
        Assert.All(codes, c => Assert.Contains($"\"{c}\"", tests, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_page_is_markdown()
    {
        using var answer = await _service.Client.GetAsync("/v1/codes/fr7010");
        Assert.Equal("text/markdown; charset=utf-8", answer.Content.Headers.ContentType?.ToString());
        Assert.Contains("no pack in force", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("FR9999")]
    [InlineData("FR70100")]
    [InlineData("..%2FFR7010")]
    [InlineData("x")]
    public async Task A_code_that_was_never_given_out_is_a_problem(string code)
    {
        using var answer = await _service.Client.GetAsync($"/v1/codes/{code}");
        await answer.IsProblemAsync(HttpStatusCode.NotFound, "FR7017");
    }
}
