using System.Net;
using FindingRules.Service.Tests.Problems;
using Xunit;

namespace FindingRules.Service.Tests.Hosting;

public sealed class HeaderTests : IAsyncLifetime
{
    private RunningService _service = null!;

    public async Task InitializeAsync() => _service = await RunningService.StartAsync();

    public async Task DisposeAsync() => await _service.DisposeAsync();

    [Theory]
    [InlineData("/index.html")]
    [InlineData("/v1/packs")]
    [InlineData("/nothing")]
    public async Task Every_answer_tells_the_browser_what_it_may_not_do(string address)
    {
        using var answer = await _service.Client.GetAsync(address);
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.Contains("default-src 'none'", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
        Assert.Equal("no-referrer", answer.Headers.GetValues("Referrer-Policy").Single());
        Assert.False(answer.Headers.Contains("Server"));
    }

    [Fact]
    public async Task Pages_from_elsewhere_are_not_let_in()
    {
        using var request = new HttpRequestMessage(HttpMethod.Options, "/v1/readings");
        request.Headers.Add("Origin", "http://example.org");
        request.Headers.Add("Access-Control-Request-Method", "POST");
        using var answer = await _service.Client.SendAsync(request);
        Assert.DoesNotContain(answer.Headers, h => h.Key.StartsWith("Access-Control", StringComparison.OrdinalIgnoreCase));
        await answer.IsProblemAsync(HttpStatusCode.MethodNotAllowed, "FR7002");
    }

    [Theory]
    [InlineData("/healthz")]
    [InlineData("/v1/packs/example")]
    public async Task HEAD_is_answered_like_GET_without_a_body(string address)
    {
        using var get = await _service.Client.GetAsync(address);
        using var request = new HttpRequestMessage(HttpMethod.Head, address);
        using var head = await _service.Client.SendAsync(request);
        Assert.Equal(get.StatusCode, head.StatusCode);
        Assert.Equal(get.Content.Headers.ContentType, head.Content.Headers.ContentType);
        Assert.Empty(await head.Content.ReadAsByteArrayAsync());
    }

    [Fact]
    public async Task The_root_leads_to_the_page()
    {
        using var answer = await _service.Client.GetAsync("/");
        Assert.Equal(HttpStatusCode.MovedPermanently, answer.StatusCode);
        Assert.Contains("index.html", answer.Headers.Location?.ToString(), StringComparison.Ordinal);
    }
}
