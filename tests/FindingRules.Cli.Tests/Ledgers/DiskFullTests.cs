using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Cli.Tests.Ledgers;

/// <summary>The files of a service may grow so far and no further, which the system reports as it does a full disk.</summary>
public sealed class DiskFullTests
{
    private const int MostKilobytes = 2_000;

    [Fact]
    public async Task Requests_fail_cleanly_nothing_acknowledged_is_lost_and_it_goes_on_when_there_is_room()
    {
        using var place = new LedgerPlace();
        using var service = new ServiceProcess(place, MostKilobytes);
        await service.ReadyAsync();
        var answers = await FillAsync(service);
        var acknowledged = answers.Count(a => a.Status == HttpStatusCode.Created);
        Assert.True(acknowledged > 20, $"{acknowledged} acknowledged");
        foreach (var (status, text) in answers.Where(a => a.Status != HttpStatusCode.Created))
        {
            var problem = JsonNode.Parse(text)!;
            Assert.Equal((HttpStatusCode.ServiceUnavailable, "FR7050"), (status, (string?)problem["code"]));
            Assert.DoesNotContain("suggestions", text, StringComparison.Ordinal);
        }
        for (var tries = 0; await BatchAsync(service) > 0; tries++) Assert.True(tries < 100, "it never became full for small studies");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await service.Client.GetAsync("/readyz")).StatusCode);
        // What was answered before can still be looked at, and found.
        Assert.Equal(HttpStatusCode.OK, (await service.Client.GetAsync($"/v1/readings/{service.Acknowledged.First()}")).StatusCode);
        var found = JsonNode.Parse(await service.Client.GetStringAsync("/v1/readings?rule=CUFF-010&limit=1000"))!["records"]!.AsArray();
        Assert.Equal(acknowledged, found.Count);
        var statistics = JsonNode.Parse(await service.Client.GetStringAsync("/v1/rules/CUFF-010/statistics"))!;
        Assert.Equal(acknowledged, (int)statistics["total"]!["fired"]!);

        await service.MakeRoomAsync();
        await service.ReadyAsync();
        Assert.Equal(HttpStatusCode.Created, (await PostAsync(service, "S-again")).Status);
        Assert.Equal(2, await BatchAsync(service));
        await service.StopAsync();

        var lines = CommandRun.Of("ledger", "export", place.Name).Out.TrimEnd().Split('\n').Select(l => JsonNode.Parse(l)!).ToArray();
        var readings = lines.Where(l => (string)l["header"]!["kind"]! == "reading").ToArray();
        // Every one that was acknowledged is there, once, and no other.
        Assert.Equal(
            service.Acknowledged.Order(StringComparer.Ordinal),
            readings.Select(l => (string)l["header"]!["id"]!).Order(StringComparer.Ordinal));
        var head = place.PathOf("head.json");
        await File.WriteAllTextAsync(head, CommandRun.Of("ledger", "head", place.Name).Out);
        Assert.Equal(ExitCode.Fine, CommandRun.Of("ledger", "verify", place.Name, "--head", head).Code);
    }

    private static async Task<List<(HttpStatusCode Status, string Text)>> FillAsync(ServiceProcess service)
    {
        var answers = new List<(HttpStatusCode, string)>();
        for (var round = 0; answers.Count(a => a.Item1 != HttpStatusCode.Created) < 8; round++)
        {
            Assert.True(round < 1_000, "it never became full");
            answers.AddRange(await Task.WhenAll(Enumerable.Range(0, 4).Select(i => PostAsync(service, $"S-{round}-{i}"))));
        }
        return answers;
    }

    private static async Task<(HttpStatusCode Status, string Text)> PostAsync(ServiceProcess service, string key)
    {
        using var study = new StringContent(
            Studies.FullThickness.Replace("S-7F3K", key, StringComparison.Ordinal), Encoding.UTF8, "application/json");
        using var answer = await service.Client.PostAsync("/v1/readings", study);
        if (answer.Headers.Location is { } location) service.Acknowledged.Enqueue(location.ToString().Split('/')[^1]);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync());
    }

    /// <summary>How many of two studies were read and recorded: where no room is left for a large one, a small one may still fit.</summary>
    private static async Task<int> BatchAsync(ServiceProcess service)
    {
        using var studies = new StringContent($"{Studies.Subluxed}\n{Studies.Normal}\n", Encoding.UTF8, "application/x-ndjson");
        using var answer = await service.Client.PostAsync("/v1/readings/batch", studies);
        var lines = (await answer.Content.ReadAsStringAsync()).TrimEnd().Split('\n').Select(l => JsonNode.Parse(l)!).ToArray();
        Assert.Equal(2, lines.Length);
        foreach (var line in lines)
            if (line["reading"] is null) Assert.Equal("FR7050", (string?)line["messages"]?[0]?["code"] ?? (string?)line["code"]);
            else service.Acknowledged.Enqueue((string)line["id"]!);
        return lines.Count(l => l["reading"] is not null);
    }
}
