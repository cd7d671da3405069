using FindingRules.Testing;
using FindingRules.Testing.Stores;
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

    /// <summary>With a ledger: what is recorded, asked for, refused while the ledger is held, and an export that breaks off.</summary>
    [Fact]
    public async Task No_line_of_the_log_carries_what_the_ledger_holds_or_was_asked()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        using var first = await service.PostAsync(Studies.FullThickness);
        (await service.PostAsync(
            """{ "suggestions": [{ "topic": "tear-depth", "subject": "right supraspinatus", "verdict": "accepted" }] }""",
            $"{first.Headers.Location}/feedback")).Dispose();
        foreach (var asked in new[] { "?study=S-7F3K", "?subject=right%20supraspinatus&missing=tear-length", $"{first.Headers.Location!.ToString()[12..]}/trace?again=true" })
            (await service.Client.GetAsync($"/v1/readings{asked}")).Dispose();
        var lines = Enumerable.Range(0, 250).Select(_ => Studies.FullThickness.ReplaceLineEndings(""));
        (await service.PostAsync(System.Text.Encoding.UTF8.GetBytes(string.Join('\n', lines)), "application/x-ndjson", "/v1/readings/batch")).Dispose();
        await BreakAsync(place);
        await Assert.ThrowsAnyAsync<HttpRequestException>(() => service.Client.GetStringAsync("/v1/ledger/export"));

        await service.UntilAsync(() => Task.FromResult(service.Log.All.Contains("GET /v1/ledger/export", StringComparison.Ordinal)));
        Assert.Contains("the ledger failed: FR6009", service.Log.All, StringComparison.Ordinal);
        foreach (var word in new[] { "S-7F3K", "persists", "14 mm", "subluxed", "supraspinatus", "tear-length", "full-thickness", "JsonReaderException" })
            Assert.DoesNotContain(service.Log.Lines, l => l.Contains(word, StringComparison.Ordinal));
    }

    // In the second page of an export, when the first is on its way.
    private static async Task BreakAsync(LedgerPlace place)
    {
        await using var other = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={place.Name};Pooling=False");
        await other.OpenAsync();
        await using var change = other.CreateCommand();
        change.CommandText = "DROP TRIGGER record_unchanged; UPDATE record SET header = CAST('{\"S-7F3K' AS BLOB) WHERE position = 230";
        await change.ExecuteNonQueryAsync();
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
