using FindingRules.Testing;
using Xunit;

namespace FindingRules.Service.Tests.Hosting;

/// <summary>The log says what was asked of the service and never what was in it.</summary>
public sealed class LogTests
{
    [Fact]
    public async Task No_line_of_the_log_carries_a_key_a_finding_a_query_or_a_path_that_was_sent()
    {
        await using var service = await RunningService.StartAsync();
        string[] bodies = [Studies.FullThickness, Studies.Misspelt, Studies.TooLong, "{ \"study\": \"S-7F3K\", \"reangled\""];
        foreach (var body in bodies)
            (await service.PostAsync(body)).Dispose();
        foreach (var address in new[] { "/v1/readings/S-7F3K", "/v1/packs/S-7F3K", "/S-7F3K?study=S-7F3K", "/v1/codes/S-7F3K" })
            (await service.Client.GetAsync(address)).Dispose();
        using (var odd = new HttpRequestMessage(new HttpMethod("S-7F3K"), "/v1/readings")) (await service.Client.SendAsync(odd)).Dispose();
        (await service.PostAsync(Studies.FullThickness, "/v1/readings?pack=S-7F3K")).Dispose();

        await service.UntilAsync(() => Task.FromResult(service.Log.Lines.Count(l => l.Contains("no route", StringComparison.Ordinal)) >= 2));
        foreach (var word in new[] { "S-7F3K", "reangled", "persists", "14 mm", "140", "subluxed", "supraspinatus", "supraspinatos", "tear-length" })
            Assert.DoesNotContain(service.Log.Lines, l => l.Contains(word, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Every_request_has_a_line_with_route_status_and_time_and_every_reading_its_pack()
    {
        await using var service = await RunningService.StartAsync();
        (await service.PostAsync(Studies.FullThickness)).Dispose();
        (await service.PostAsync(Studies.Misspelt)).Dispose();
        var digest = await service.DigestInForceAsync();
        await service.UntilAsync(() => Task.FromResult(service.Log.Lines.Count(l => l.Contains("POST /v1/readings", StringComparison.Ordinal)) == 2));
        Assert.Contains(service.Log.Lines, l => l.Contains("POST /v1/readings 200 in", StringComparison.Ordinal));
        Assert.Contains(service.Log.Lines, l => l.Contains("POST /v1/readings 422 in", StringComparison.Ordinal));
        Assert.Contains(service.Log.Lines, l => l.Contains($"read with pack example {digest}", StringComparison.Ordinal));
        Assert.Contains(service.Log.Lines, l => l.Contains("no reading: FR7006", StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_was_answered_as_it_should_be_is_told_only_to_who_looks_closely()
    {
        await using var service = await RunningService.StartAsync(looksClosely: false);
        (await service.PostAsync(Studies.FullThickness)).Dispose();
        (await service.PostAsync(Studies.Misspelt)).Dispose();
        await service.UntilAsync(() => Task.FromResult(service.Log.Lines.Any(l => l.Contains("POST /v1/readings 422 in", StringComparison.Ordinal))));
        Assert.DoesNotContain(service.Log.Lines, l => l.Contains("POST /v1/readings 200 in", StringComparison.Ordinal));
        Assert.DoesNotContain(service.Log.Lines, l => l.Contains("read with pack", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_pack_in_force_is_logged_with_its_digest()
    {
        await using var service = await RunningService.StartAsync();
        var digest = ExamplePack.Plain.Compile().Pack.TextDigest;
        Assert.Contains(service.Log.Lines, l => l.Contains($"pack example 1.0.0 is in force: digest {digest}", StringComparison.Ordinal));
    }
}
