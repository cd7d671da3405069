using System.Net;
using System.Text.Json.Nodes;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Service.Readings;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Service.Tests.Problems;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace FindingRules.Service.Tests.Readings;

/// <summary>A failed or late evaluation must never look like a study without suggestions.</summary>
public sealed class NoReadingTests
{
    [Fact]
    public async Task A_failed_evaluation_says_that_there_is_no_reading()
    {
        await using var service = await StartAsync((_, _, _) => throw new InvalidOperationException("S-7F3K 14 mm"));
        using var answer = await service.PostAsync(Studies.FullThickness);
        var problem = await answer.IsNoReadingAsync(HttpStatusCode.InternalServerError, "FR7020");
        var request = (string)problem["request"]!;
        Assert.DoesNotContain("S-7F3K", problem.ToJsonString(), StringComparison.Ordinal);
        Assert.Contains(service.Log.Lines, l => l.Contains(request, StringComparison.Ordinal) && l.Contains("InvalidOperationException", StringComparison.Ordinal));
        Assert.DoesNotContain("S-7F3K", service.Log.All, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_fault_that_the_front_door_wrapped_is_no_mistake_of_the_study()
    {
        await using var service = await StartAsync((_, study, _) =>
            new WholeReading(null, [ToolMessages.Internal(study.Whole, "evaluating the study", "S-7F3K")]));
        using var answer = await service.PostAsync(Studies.FullThickness);
        await answer.IsNoReadingAsync(HttpStatusCode.InternalServerError, "FR7020");
        Assert.DoesNotContain("S-7F3K", service.Log.All, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_outcome_without_reading_and_without_message_is_a_fault()
    {
        await using var service = await StartAsync((_, _, _) => new WholeReading(null, []));
        using var answer = await service.PostAsync(Studies.FullThickness);
        await answer.IsNoReadingAsync(HttpStatusCode.InternalServerError, "FR7020");
    }

    [Fact]
    public async Task A_late_evaluation_says_that_there_is_no_reading()
    {
        using var release = new ManualResetEventSlim();
        await using var service = await StartAsync(
            (pack, study, limits) =>
            {
                release.Wait(TimeSpan.FromSeconds(20));
                return pack.ReadWhole(study, limits);
            },
            RunningService.Quick with { ReadingMilliseconds = 50 });
        using var answer = await service.PostAsync(Studies.FullThickness);
        await answer.IsNoReadingAsync(HttpStatusCode.ServiceUnavailable, "FR7021");
        release.Set();
    }

    [Fact]
    public async Task One_study_more_than_may_wait_is_turned_away_at_once_and_the_others_are_read()
    {
        using var release = new ManualResetEventSlim();
        using var running = new SemaphoreSlim(0);
        await using var service = await StartAsync(
            (pack, study, limits) =>
            {
                running.Release();
                release.Wait(TimeSpan.FromSeconds(20));
                return pack.ReadWhole(study, limits);
            },
            RunningService.Quick with { ConcurrentReadings = 1, WaitingReadings = 0 });
        var first = service.PostAsync(Studies.FullThickness);
        Assert.True(await running.WaitAsync(TimeSpan.FromSeconds(10)));
        using var second = await service.PostAsync(Studies.FullThickness);
        await second.IsNoReadingAsync(HttpStatusCode.ServiceUnavailable, "FR7022");
        Assert.Equal(TimeSpan.FromSeconds(1), second.Headers.RetryAfter?.Delta);
        release.Set();
        using var answer = await first;
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Fact]
    public async Task A_late_evaluation_keeps_its_place_until_it_ends()
    {
        using var release = new ManualResetEventSlim();
        await using var service = await StartAsync(
            (pack, study, limits) =>
            {
                release.Wait(TimeSpan.FromSeconds(20));
                return pack.ReadWhole(study, limits);
            },
            RunningService.Quick with { ReadingMilliseconds = 200, ConcurrentReadings = 1, WaitingReadings = 0 });
        using (var late = await service.PostAsync(Studies.FullThickness))
            await late.IsNoReadingAsync(HttpStatusCode.ServiceUnavailable, "FR7021");
        using (var next = await service.PostAsync(Studies.FullThickness))
            await next.IsNoReadingAsync(HttpStatusCode.ServiceUnavailable, "FR7022");
        release.Set();
        await service.UntilAsync(async () => (await service.PostAsync(Studies.FullThickness)).IsSuccessStatusCode);
    }

    [Fact]
    public async Task Without_a_pack_there_is_no_reading()
    {
        await using var service = await RunningService.StartAsync(new PackDisk(), mustBeReady: false);
        using var answer = await service.PostAsync(Studies.FullThickness);
        await answer.IsNoReadingAsync(HttpStatusCode.ServiceUnavailable, "FR7010");
    }

    [Fact]
    public async Task A_request_that_breaks_off_leaves_the_service_well()
    {
        await using var service = await RunningService.StartAsync();
        using (var client = new System.Net.Sockets.TcpClient())
        {
            await client.ConnectAsync(service.Client.BaseAddress!.Host, service.Client.BaseAddress.Port);
            await client.GetStream().WriteAsync(
                "POST /v1/readings HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: 400\r\n\r\n{ \"study\""u8.ToArray());
        }
        using var answer = await service.PostAsync(Studies.FullThickness);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.NotNull(JsonNode.Parse(await answer.Content.ReadAsStringAsync())!["suggestions"]);
    }

    private static Task<RunningService> StartAsync(StudyEvaluation evaluate, ServiceLimits? limits = null) =>
        RunningService.StartAsync(limits: limits, change: services => services.AddSingleton(evaluate));
}
