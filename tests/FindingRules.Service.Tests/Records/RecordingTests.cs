using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Searching;
using FindingRules.Service.Readings;
using FindingRules.Service.Records;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Service.Tests.Problems;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Service.Tests.Records;

/// <summary>An answer is a durable record, unless it was asked not to be.</summary>
public sealed class RecordingTests
{
    [Theory]
    [OnSqlite]
    [OnPostgreSql]
    public async Task An_answered_reading_is_a_record_with_the_bytes_of_the_answer(Store store)
    {
        using var place = new LedgerPlace(store);
        byte[] answered;
        Guid id;
        await using (var service = await RunningService.StartAsync(ledger: place))
        {
            using var answer = await service.PostAsync(Studies.FullThickness);
            Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
            answered = await answer.Content.ReadAsByteArrayAsync();
            id = IdOf(answer);
            Assert.Equal(answered, await ReadOnlyTryAsync(service));
        }
        await using var ledger = await place.OpenAsync();
        var record = await ledger.FindAsync(id);
        Assert.Equal(answered, record!.Body!.Answer.ToArray());
        Assert.Equal(("anonymous", RecordKind.Reading), (record.Actor, record.Kind));
        Assert.Equal(1, await ledger.CountReadingsAsync());
        Assert.True((await Repetition.OfAsync(new PackLibrary(ledger.FindPackAsync), record, wantsAgain: true)).Again!.IsEqual);
    }

    [Theory]
    [OnSqlite]
    [OnPostgreSql]
    public async Task A_retry_gets_the_first_answer_and_its_key_serves_no_other_request(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var service = await RunningService.StartAsync(ledger: place);
        using var first = await SendAsync(service, Studies.FullThickness, "key-1");
        service.Disk.Write("example", PackDisk.Changed("Another reason."));
        var digest = await service.DigestInForceAsync();
        await service.UntilAsync(async () => await service.DigestInForceAsync() != digest);

        using var again = await SendAsync(service, Studies.FullThickness, "key-1");
        Assert.Equal((first.StatusCode, first.Headers.Location), (again.StatusCode, again.Headers.Location));
        Assert.Equal(await first.Content.ReadAsStringAsync(), await again.Content.ReadAsStringAsync());
        using var other = await SendAsync(service, Studies.FullThickness.Replace("S-7F3K", "S-8", StringComparison.Ordinal), "key-1");
        await other.IsNoReadingAsync(HttpStatusCode.UnprocessableEntity, "FR7054");
        using var elsewhere = await SendAsync(service, Studies.FullThickness, "key-2");
        Assert.NotEqual(first.Headers.Location, elsewhere.Headers.Location);
        Assert.Equal(2, await service.Part<LedgerKeeper>().Ledger!.CountReadingsAsync());
    }

    [Fact]
    public async Task Many_retries_at_once_make_one_record()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        var answers = await Task.WhenAll(Enumerable.Range(0, 16).Select(_ => SendAsync(service, Studies.FullThickness, "key-1")));
        Assert.Single(answers.Select(a => a.Headers.Location).Distinct());
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Created, a.StatusCode));
        Assert.Equal(1, await service.Part<LedgerKeeper>().Ledger!.CountReadingsAsync());
        foreach (var answer in answers) answer.Dispose();
    }

    [Theory]
    [InlineData("record=maybe", null, "FR7053")]
    [InlineData("recorded=false", null, "FR7007")]
    [InlineData("record=true", "", "FR7055")]
    public async Task What_is_said_wrongly_is_refused_and_not_recorded(string query, string? key, string code)
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        using var answer = await SendAsync(service, Studies.FullThickness, key, $"/v1/readings?{query}");
        await answer.IsNoReadingAsync(HttpStatusCode.BadRequest, code);
        Assert.Equal(0, await service.Part<LedgerKeeper>().Ledger!.CountReadingsAsync());
    }

    [Fact]
    public async Task The_trace_that_a_request_belongs_to_is_in_its_record()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        using var request = Request(Studies.FullThickness, "/v1/readings");
        request.Headers.Add("traceparent", "00-4bf92f3577b34da6a3ce929d0e0e4736-00f067aa0ba902b7-01");
        request.Headers.Add("tracestate", "a=1,b=2");
        using var answer = await service.Client.SendAsync(request);
        var record = await service.Part<LedgerKeeper>().Ledger!.FindAsync(IdOf(answer));
        Assert.Equal("4bf92f3577b34da6a3ce929d0e0e4736", record!.Correlation!.TraceId);
        Assert.True(record.Correlation.State.IsEmpty, "text of other programs is in a header, for ever");
    }

    [Fact]
    public async Task Where_the_ledger_fails_there_is_no_reading_and_service_goes_on_when_it_works_again()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        (await service.PostAsync(Studies.FullThickness)).Dispose();
        await using (var other = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={place.Name};Pooling=False"))
        {
            await other.OpenAsync();
            await using var lockAll = other.CreateCommand();
            lockAll.CommandText = "BEGIN EXCLUSIVE";
            await lockAll.ExecuteNonQueryAsync();
            using var refused = await service.PostAsync(Studies.FullThickness);
            var problem = await refused.IsNoReadingAsync(HttpStatusCode.ServiceUnavailable, "FR7050");
            Assert.DoesNotContain(place.Name, problem.ToJsonString(), StringComparison.Ordinal);
            Assert.Contains("Nothing was recorded", (string)problem["detail"]!, StringComparison.Ordinal);
            Assert.Equal("5", refused.Headers.RetryAfter!.ToString());
        }
        using var answered = await service.PostAsync(Studies.FullThickness);
        Assert.Equal(HttpStatusCode.Created, answered.StatusCode);
        Assert.Equal(2, await service.Part<LedgerKeeper>().Ledger!.CountReadingsAsync());
    }

    [Fact]
    public async Task Every_line_of_a_batch_names_its_record()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        var studies = Enumerable.Range(0, 200).Select(i => Studies.FullThickness.ReplaceLineEndings("").Replace("S-7F3K", $"S-{i}", StringComparison.Ordinal));
        var body = Encoding.UTF8.GetBytes(string.Join('\n', studies) + "\n{ \"study\": 1 }\n");
        using var answer = await service.PostAsync(body, "application/x-ndjson", "/v1/readings/batch");
        var lines = (await answer.Content.ReadAsStringAsync()).TrimEnd().Split('\n').Select(l => JsonNode.Parse(l)!).ToArray();
        var ledger = service.Part<LedgerKeeper>().Ledger!;
        Assert.Equal((201, 200), (lines.Length, await ledger.CountReadingsAsync()));
        Assert.NotNull(lines[200]["noReading"]);
        foreach (var i in new[] { 0, 63, 199 })
        {
            var record = await ledger.FindAsync((Guid)lines[i]["id"]!);
            Assert.Equal($"S-{i}", (string)JsonNode.Parse(record!.Body!.Answer.Span)!["study"]!);
            Assert.True(JsonNode.DeepEquals(JsonNode.Parse(record.Body.Answer.Span), lines[i]["reading"]));
        }
        using var tried = await service.PostAsync(body, "application/x-ndjson", "/v1/readings/batch?record=false");
        Assert.All((await tried.Content.ReadAsStringAsync()).TrimEnd().Split((char)10), l => Assert.False(l.StartsWith("{\"id\"", StringComparison.Ordinal)));
        Assert.Equal(200, await ledger.CountReadingsAsync());
    }

    [Fact]
    public async Task A_batch_takes_no_key()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        using var request = Request(Studies.FullThickness, "/v1/readings/batch");
        request.Content!.Headers.ContentType = new System.Net.Http.Headers.MediaTypeHeaderValue("application/x-ndjson");
        request.Headers.Add(ReadingRequest.KeyHeader, "key-1");
        using var answer = await service.Client.SendAsync(request);
        await answer.IsNoReadingAsync(HttpStatusCode.BadRequest, "FR7063");
    }

    [Fact]
    public async Task A_reading_is_found_by_the_rules_that_fired_and_by_what_was_missing()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        using var answer = await service.PostAsync(Studies.FullThickness);
        var reading = JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
        var ledger = service.Part<LedgerKeeper>().Ledger!;
        var shown = (string)reading["suggestions"]![0]!["rules"]![0]!["id"]!;
        foreach (var outcome in new[] { RuleOutcomes.Fired, RuleOutcomes.Shown })
            Assert.Single((await ledger.SearchAsync(new LedgerQuery { Rule = shown, Outcome = outcome })).Records);
        var unknown = reading["unknown"]!.AsArray().First(u => u!["missing"]!.AsArray().Count > 0)!;
        Assert.Single((await ledger.SearchAsync(new LedgerQuery
        {
            Rule = (string)unknown["rule"]!["id"]!,
            Missing = (string)unknown["missing"]![0]!["finding"]!,
        })).Records);
        Assert.Empty((await ledger.SearchAsync(new LedgerQuery { Rule = "NONE-1" })).Records);
    }

    private static HttpRequestMessage Request(string study, string address) =>
        new(HttpMethod.Post, address) { Content = new StringContent(study, Encoding.UTF8, "application/json") };

    private static async Task<HttpResponseMessage> SendAsync(
        RunningService service, string study, string? key, string address = "/v1/readings")
    {
        using var request = Request(study, address);
        if (key is not null) request.Headers.TryAddWithoutValidation(ReadingRequest.KeyHeader, key);
        return await service.Client.SendAsync(request);
    }

    private static async Task<byte[]> ReadOnlyTryAsync(RunningService service)
    {
        using var answer = await service.PostAsync(Studies.FullThickness, "/v1/readings?record=false");
        Assert.Equal((HttpStatusCode.OK, null), (answer.StatusCode, answer.Headers.Location));
        return await answer.Content.ReadAsByteArrayAsync();
    }

    private static Guid IdOf(HttpResponseMessage answer) => Guid.Parse(answer.Headers.Location!.ToString()["/v1/readings/".Length..]);
}
