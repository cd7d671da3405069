using System.Net;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Service.Tests.OpenApi;

/// <summary>The worked examples of records: what the service answers after it read one study of the invented pack.</summary>
public sealed class RecordExampleTests
{
    [Theory]
    [InlineData("", "GetRecord.200.full-thickness.json")]
    [InlineData("/trace?again=true", "GetRecordTrace.200.repeated.json")]
    [InlineData("/proof", "GetRecordProof.200.proven.json")]
    public async Task A_record_is_answered_as_the_example_says(string part, string name)
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        using var reading = await RecordAsync(service);
        Examples.Match(name, await service.Client.GetStringAsync($"{reading.Headers.Location}{part}"));
    }

    [Theory]
    [InlineData("/v1/readings?rule=CUFF-010&from=2026-01-01", "SearchReadings.200.one-found.json")]
    [InlineData("/v1/ledger/tree-head", "GetTreeHead.200.two-records.json")]
    [InlineData("/v1/ledger/consistency?from=1", "GetConsistency.200.from-one-to-two.json")]
    [InlineData("/v1/ledger/export", "ExportRecords.200.two-records.ndjson")]
    [InlineData("/v1/rules/CUFF-010/statistics", "GetRuleStatistics.200.once-fired.json")]
    public async Task What_is_asked_of_the_ledger_is_answered_as_the_example_says(string address, string name)
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        using var reading = await RecordAsync(service);
        Examples.Match(name, await service.Client.GetStringAsync(address));
    }

    [Fact]
    public async Task A_public_key_is_a_text_as_the_example_says()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        var pem = await service.Client.GetStringAsync("/v1/ledger/public-key");
        var lines = pem.Split('\n');
        // The key is another one each time; only its first and last line can be foreseen.
        Examples.Match("GetPublicKey.200.invented.pem", $"{lines[0]}\nMFkwEwYHKoZIzj0CAQYIKoZIzj0DAQcDQgAE\n{lines[^2]}\n");
    }

    [Fact]
    public async Task A_recorded_reading_is_answered_as_the_example_says()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        using var reading = await RecordAsync(service);
        Assert.Equal(HttpStatusCode.Created, reading.StatusCode);
        Examples.Match("CreateReading.201.full-thickness.json", await reading.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task Feedback_is_answered_as_the_examples_say()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        using var reading = await RecordAsync(service);
        var (address, body) = ($"{reading.Headers.Location}/feedback", Examples.Read("CreateFeedback.request.one-overridden.json"));
        using var answer = await service.PostAsync(body, address);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        Examples.Match("CreateFeedback.201.one-overridden.json", await answer.Content.ReadAsStringAsync());
        Examples.Match("ListFeedback.200.one-overridden.json", await service.Client.GetStringAsync(address));
        using var wrong = await service.PostAsync(body.Replace("tear-depth", "tear-deep", StringComparison.Ordinal), address);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        Examples.Match("CreateFeedback.422.misspelt-topic.json", await wrong.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task A_record_that_is_not_there_is_answered_as_the_example_says()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        using var answer = await service.Client.GetAsync($"/v1/readings/{Guid.CreateVersion7()}");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Examples.Match("GetRecord.404.not-there.json", await answer.Content.ReadAsStringAsync());
    }

    private static async Task<HttpResponseMessage> RecordAsync(RunningService service)
    {
        // The pack's own withdrawal is the first record, whoever is quicker.
        await service.UntilAsync(async () =>
            (await service.Part<Service.Records.LedgerKeeper>().Ledger!.GetTreeHeadAsync())!.Size == 1);
        return await service.PostAsync(Examples.Read("CreateReading.request.full-thickness.json"));
    }
}
