using System.Net;
using System.Text;
using FindingRules.Service.Readings;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Service.Tests.Problems;
using FindingRules.Testing;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Service.Tests.Feedback;

public sealed class FeedbackTests : IAsyncLifetime, IDisposable
{
    private const string Overridden =
        """{ "suggestions": [{ "topic": "tear-depth", "subject": "right supraspinatus", "verdict": "overridden", "reason": "wording" }] }""";

    private const string Accepted = """{ "suggestions": [{ "step": "evaluate right subscapularis", "verdict": "accepted" }] }""";

    private readonly LedgerPlace _place = new();
    private RunningService _service = null!;
    private string _reading = "";

    public async Task InitializeAsync()
    {
        _service = await RunningService.StartAsync(ledger: _place);
        using var answer = await _service.PostAsync(Studies.FullThickness);
        _reading = answer.Headers.Location!.ToString();
    }

    public async Task DisposeAsync() => await _service.DisposeAsync();

    public void Dispose() => _place.Dispose();

    [Fact]
    public async Task Feedback_is_a_record_that_is_listed_counted_and_found()
    {
        using var first = await SendAsync(Overridden);
        Assert.Equal((HttpStatusCode.Created, $"{_reading}/feedback"), (first.StatusCode, first.Headers.Location!.ToString()));
        (await SendAsync(Accepted)).Dispose();
        var listed = (await _service.GetJsonAsync($"{_reading}/feedback"))["feedback"]!.AsArray();
        Assert.Equal(["accepted", "overridden"], listed.Select(f => (string)f!["content"]!["suggestions"]![0]!["verdict"]!));
        var total = (await _service.GetJsonAsync("/v1/rules/CUFF-010/statistics"))["total"]!;
        Assert.Equal(1, (int)total["overridden"]!["wording"]!);
        foreach (var query in new[] { "accepted=false", "reason=wording", "accepted=false&rule=CUFF-010", "accepted=true" })
            Assert.Single((await _service.GetJsonAsync($"/v1/readings?{query}"))["records"]!.AsArray());
        Assert.Empty((await _service.GetJsonAsync("/v1/readings?accepted=true&rule=CUFF-010"))["records"]!.AsArray());
    }

    /// <summary>The id in the address may be written in capitals; the key of a reading never meets the key of feedback.</summary>
    [Fact]
    public async Task A_retry_is_one_record_however_the_address_is_written_and_no_reading_takes_its_place()
    {
        using var first = await SendAsync(Overridden, "k");
        using var again = await SendAsync(Overridden, "k", $"{_reading[..^36]}{_reading[^36..].ToUpperInvariant()}");
        Assert.Equal((first.StatusCode, first.Headers.Location), (again.StatusCode, again.Headers.Location));
        Assert.Equal(await first.Content.ReadAsStringAsync(), await again.Content.ReadAsStringAsync());
        Assert.Single((await _service.GetJsonAsync($"{_reading}/feedback"))["feedback"]!.AsArray());
        // A reading's request is the name of its pack and a line break before the study.
        using var feedback = await SendAsync($"\n{Overridden}", "k-2");
        Assert.Equal(HttpStatusCode.Created, feedback.StatusCode);
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/readings");
        request.Content = new StringContent(Overridden, Encoding.UTF8, "application/json");
        request.Headers.Add(ReadingRequest.KeyHeader, $"feedback {_reading[^36..]} k-2");
        using var reading = await _service.Client.SendAsync(request);
        await reading.IsNoReadingAsync(HttpStatusCode.UnprocessableEntity, "FR7006");
    }

    [Theory]
    [InlineData("""{ "suggestions": [{ "topic": "tear-deep", "subject": "right supraspinatus", "verdict": "accepted" }] }""", "FR7062")]
    [InlineData("""{ "suggestions": [{ "step": "evaluate right subscapularis", "verdict": "overridden", "reason": "wordin" }] }""", "FR6046")]
    [InlineData("""{ "suggestions": [{ "step": "evaluate right subscapularis", "verdict": "overridden" }] }""", "FR6045")]
    [InlineData("""{ "suggestions": [{ "step": "evaluate right subscapularis", "verdict": "accepted", "reason": "wording" }] }""", "FR6044")]
    [InlineData("""{ "suggestions": [] }""", "FR6042")]
    public async Task Feedback_that_does_not_fit_the_reading_is_refused_whole(string body, string code)
    {
        using var answer = await SendAsync(body);
        var problem = await answer.IsProblemAsync(HttpStatusCode.UnprocessableEntity, "FR7065");
        Assert.Equal([code], problem.Codes());
        Assert.Empty((await _service.GetJsonAsync($"{_reading}/feedback"))["feedback"]!.AsArray());
    }

    [Theory]
    [InlineData("""{ "suggestions": [{ "verdict": "accepted" }] }""")]
    [InlineData("""{ "suggestions": [{ "step": "a", "caution": "b", "verdict": "accepted" }] }""")]
    [InlineData("""{ "suggestions": [{ "topic": "tear-depth", "verdict": "accepted" }] }""")]
    [InlineData("""{ "suggestions": [{ "step": "a", "verdict": "perhaps" }] }""")]
    [InlineData("""{ "suggestions": [{ "step": "a", "verdict": "accepted", "comment": "free text" }] }""")]
    [InlineData("""{ "suggestions": [null] }""")]
    [InlineData("""{ "suggestions": null }""")]
    [InlineData("""{ }""")]
    [InlineData("""[""")]
    public async Task Feedback_in_another_form_is_refused(string body)
    {
        using var answer = await SendAsync(body);
        await answer.IsProblemAsync(HttpStatusCode.BadRequest, "FR7061");
    }

    [Fact]
    public async Task More_suggestions_than_any_reading_has_are_one_mistake()
    {
        var many = string.Join(',', Enumerable.Repeat("""{ "step": "a", "verdict": "accepted" }""", 501));
        using var answer = await SendAsync($$"""{ "suggestions": [{{many}}] }""");
        await answer.IsProblemAsync(HttpStatusCode.BadRequest, "FR7061");
    }

    [Fact]
    public async Task A_retry_is_recorded_once_and_its_key_serves_no_other_feedback()
    {
        using var first = await SendAsync(Accepted, "key-1");
        using var again = await SendAsync(Accepted, "key-1");
        Assert.Equal(await first.Content.ReadAsStringAsync(), await again.Content.ReadAsStringAsync());
        using var other = await SendAsync(Overridden, "key-1");
        await other.IsProblemAsync(HttpStatusCode.UnprocessableEntity, "FR7054");
        Assert.Single((await _service.GetJsonAsync($"{_reading}/feedback"))["feedback"]!.AsArray());
    }

    [Fact]
    public async Task Without_reasons_in_the_pack_nothing_can_be_overridden()
    {
        var manifest = ExamplePack.Plain.TextOf("pack");
        var (start, end) = (manifest.IndexOf("reasons:", StringComparison.Ordinal), manifest.IndexOf("files:", StringComparison.Ordinal));
        var digest = await _service.DigestInForceAsync();
        _service.Disk.Write("example", ExamplePack.Plain.Replace("pack", manifest.Remove(start, end - start)));
        await _service.UntilAsync(async () => await _service.DigestInForceAsync() != digest);
        using var reading = await _service.PostAsync(Studies.FullThickness);
        using var answer = await SendAsync(Overridden, to: reading.Headers.Location!.ToString());
        Assert.Equal(["FR7064"], (await answer.IsProblemAsync(HttpStatusCode.UnprocessableEntity, "FR7065")).Codes());
    }

    private async Task<HttpResponseMessage> SendAsync(string body, string? key = null, string? to = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, $"{to ?? _reading}/feedback")
        {
            Content = new StringContent(body, Encoding.UTF8, "application/json"),
        };
        if (key is not null) request.Headers.TryAddWithoutValidation(ReadingRequest.KeyHeader, key);
        return await _service.Client.SendAsync(request);
    }
}
