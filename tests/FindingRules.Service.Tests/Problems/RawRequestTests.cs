using System.Net.Sockets;
using System.Text;
using FindingRules.Service.Readings;
using FindingRules.Service.Tests.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace FindingRules.Service.Tests.Problems;

/// <summary>Requests that no library would write, and faults that nobody foresaw.</summary>
public sealed class RawRequestTests
{
    private const string Head = "POST /v1/readings HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n";

    [Fact]
    public async Task A_request_that_comes_too_slowly_is_given_up_and_there_is_no_reading()
    {
        await using var service = await RunningService.StartAsync();
        var answer = await SendAsync(service, $"{Head}Content-Length: 400\r\n\r\n{{ \"study\":");
        Assert.StartsWith("HTTP/1.1 408", answer, StringComparison.Ordinal);
        AssertNoReading(answer, "FR7008");
    }

    [Fact]
    public async Task A_body_that_breaks_the_rules_of_HTTP_is_not_read()
    {
        await using var service = await RunningService.StartAsync();
        var answer = await SendAsync(service, $"{Head}Transfer-Encoding: chunked\r\n\r\nnonsense\r\n");
        Assert.StartsWith("HTTP/1.1 400", answer, StringComparison.Ordinal);
        AssertNoReading(answer, "FR7009");
    }

    [Fact]
    public async Task A_fault_that_nobody_foresaw_names_the_request_and_shows_nothing_else()
    {
        await using var service = await RunningService.StartAsync(change: services =>
            services.AddSingleton<ReadingDesk>(_ => throw new InvalidOperationException("S-7F3K")));
        using var answer = await service.PostAsync(Studies.FullThickness);
        var problem = await answer.IsNoReadingAsync(System.Net.HttpStatusCode.InternalServerError, "FR7023");
        Assert.Contains(service.Log.Lines, l => l.Contains((string)problem["request"]!, StringComparison.Ordinal));
        Assert.DoesNotContain("S-7F3K", problem.ToJsonString() + service.Log.All, StringComparison.Ordinal);
    }

    private static void AssertNoReading(string answer, string code)
    {
        Assert.Contains($"\"code\":\"{code}\"", answer, StringComparison.Ordinal);
        Assert.Contains("\"reading\":null", answer, StringComparison.Ordinal);
    }

    private static async Task<string> SendAsync(RunningService service, string request)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(service.Client.BaseAddress!.Host, service.Client.BaseAddress.Port);
        await client.GetStream().WriteAsync(Encoding.ASCII.GetBytes(request));
        using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        using var reader = new StreamReader(client.GetStream());
        return await reader.ReadToEndAsync(limit.Token);
    }
}
