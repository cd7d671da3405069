using System.Net;
using System.Text;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Service.Tests.Problems;
using Xunit;

namespace FindingRules.Service.Tests.Readings;

public sealed class ReadingProblemTests : IAsyncLifetime
{
    private RunningService _service = null!;

    public async Task InitializeAsync() => _service = await RunningService.StartAsync();

    public async Task DisposeAsync() => await _service.DisposeAsync();

    [Fact]
    public async Task A_study_that_does_not_fit_says_each_mistake_with_its_place()
    {
        using var answer = await _service.PostAsync(Studies.Misspelt);
        var problem = await answer.IsNoReadingAsync(HttpStatusCode.UnprocessableEntity, "FR7006");
        var message = problem["messages"]![0]!;
        Assert.StartsWith("FR5", (string?)message["code"], StringComparison.Ordinal);
        Assert.Equal("error", (string?)message["severity"]);
        Assert.Equal("request", (string?)message["file"]);
        Assert.Equal((2, 18), ((int)message["line"]!, (int)message["column"]!));
        Assert.StartsWith("/subjects/0", (string?)message["pointer"], StringComparison.Ordinal);
        Assert.Contains("supraspinatus", message.ToJsonString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{ \"study\": \"S-1\", ")]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("study")]
    [InlineData("{ \"study\": \"S-1\" } }")]
    [InlineData("{ \"study\": \"\\uD800\"")]
    public async Task What_is_not_JSON_is_a_bad_request(string body)
    {
        using var answer = await _service.PostAsync(body);
        await answer.IsNoReadingAsync(HttpStatusCode.BadRequest, "FR7005");
    }

    [Theory]
    [InlineData("[]")]
    [InlineData("7")]
    [InlineData("null")]
    [InlineData("{}")]
    [InlineData("{ \"study\": \"S-1\", \"patientName\": \"x\" }")]
    [InlineData("{ \"study\": \"S-1\", \"study\": \"S-2\" }")]
    [InlineData("{ \"study\": \"S-1\", \"pack\": 7 }")]
    [InlineData("{ \"study\": \"\\uD800\" }")]
    public async Task What_is_JSON_and_no_study_cannot_be_processed(string body)
    {
        using var answer = await _service.PostAsync(body);
        var problem = await answer.IsNoReadingAsync(HttpStatusCode.UnprocessableEntity, "FR7006");
        Assert.All(problem.Codes(), c => Assert.StartsWith("FR5", c, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Bytes_that_are_not_UTF8_are_a_bad_request()
    {
        byte[] body = [.. Encoding.UTF8.GetBytes("{ \"study\": \""), 0xC3, 0x28, .. Encoding.UTF8.GetBytes("\" }")];
        using var answer = await _service.PostAsync(body, "application/json");
        var problem = await answer.IsNoReadingAsync(HttpStatusCode.BadRequest, "FR7005");
        Assert.Equal(["FR0005"], problem.Codes());
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("application/json; charset=utf-16")]
    [InlineData("application/json5")]
    [InlineData("nonsense")]
    [InlineData(null)]
    public async Task Another_content_type_is_not_taken(string? type)
    {
        using var answer = await _service.PostAsync(Encoding.UTF8.GetBytes(Studies.FullThickness), type);
        await answer.IsNoReadingAsync(HttpStatusCode.UnsupportedMediaType, "FR7003");
    }

    [Fact]
    public async Task A_compressed_study_is_not_taken()
    {
        using var content = new ByteArrayContent([0x1F, 0x8B]);
        content.Headers.ContentType = new("application/json");
        content.Headers.ContentEncoding.Add("gzip");
        using var answer = await _service.Client.PostAsync("/v1/readings", content);
        await answer.IsNoReadingAsync(HttpStatusCode.UnsupportedMediaType, "FR7003");
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_study_that_is_too_large_is_not_taken(bool isLengthSaid)
    {
        var body = Encoding.UTF8.GetBytes($"{{ \"study\": \"{new string('x', 1024 * 1024)}\" }}");
        using HttpContent content = isLengthSaid ? new ByteArrayContent(body) : new StreamContent(new UnknownLength(body));
        content.Headers.ContentType = new("application/json");
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/readings") { Content = content };
        request.Headers.ExpectContinue = true;
        using var answer = await _service.Client.SendAsync(request);
        await answer.IsNoReadingAsync(HttpStatusCode.RequestEntityTooLarge, "FR7004");
    }

    [Theory]
    [InlineData(33)]
    [InlineData(100_000)]
    public async Task A_study_that_is_too_deep_is_not_read(int depth)
    {
        using var answer = await _service.PostAsync($"{{ \"study\": {new string('[', depth)}{new string(']', depth)} }}");
        await answer.IsNoReadingAsync(HttpStatusCode.UnprocessableEntity, "FR7006");
    }

    [Fact]
    public async Task A_pack_that_is_not_in_force_is_said_with_the_place_in_the_study()
    {
        using var answer = await _service.PostAsync("""
            { "study": "S-1",
              "pack": "exampel" }
            """);
        var problem = await answer.IsNoReadingAsync(HttpStatusCode.UnprocessableEntity, "FR7011");
        var message = problem["messages"]![0]!;
        Assert.Equal("/pack", (string?)message["pointer"]);
        Assert.Equal((2, 11), ((int)message["line"]!, (int)message["column"]!));
        Assert.Contains("did you mean `example`?", (string?)message["label"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_pack_in_the_address_that_is_not_in_force_is_not_found()
    {
        using var answer = await _service.PostAsync(Studies.FullThickness, "/v1/readings?pack=exampel");
        await answer.IsNoReadingAsync(HttpStatusCode.NotFound, "FR7011");
    }

    [Fact]
    public async Task A_misspelt_parameter_is_not_passed_over()
    {
        using var answer = await _service.PostAsync(Studies.FullThickness, "/v1/readings?pakc=example");
        await answer.IsNoReadingAsync(HttpStatusCode.BadRequest, "FR7007");
    }

    [Fact]
    public async Task Readings_cannot_be_fetched_in_a_batch()
    {
        using var answer = await _service.Client.PutAsync("/v1/readings/batch", null);
        var problem = await answer.IsProblemAsync(HttpStatusCode.MethodNotAllowed, "FR7002");
        Assert.Contains("`POST`", (string?)problem["detail"], StringComparison.Ordinal);
    }

    private sealed class UnknownLength(byte[] bytes) : MemoryStream(bytes)
    {
        public override bool CanSeek => false;
    }
}
