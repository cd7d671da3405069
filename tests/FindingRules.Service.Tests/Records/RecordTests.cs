using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using FindingRules.Ledger.Erasing;
using FindingRules.Ledger.Merkle;
using FindingRules.Ledger.Signing;
using FindingRules.Service.Hosting;
using FindingRules.Service.Records;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Service.Tests.Problems;
using FindingRules.Testing.Stores;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace FindingRules.Service.Tests.Records;

/// <summary>A record can be asked for, explained, repeated, proven and found.</summary>
public sealed class RecordTests
{
    [Theory]
    [OnSqlite]
    [OnPostgreSql]
    public async Task A_reading_is_explained_and_repeated_with_the_pack_of_then_after_another_took_its_place(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var service = await RunningService.StartAsync(ledger: place);
        var address = await RecordAsync(service, Studies.FullThickness);
        service.Disk.Write("example", PackDisk.Changed("Another reason."));
        var digest = await service.DigestInForceAsync();
        await service.UntilAsync(async () => await service.DigestInForceAsync() != digest);

        var trace = await service.GetJsonAsync($"{address}/trace?again=true");
        Assert.True((bool)trace["again"]!["isEqual"]!);
        Assert.Equal(digest, (string)trace["trace"]!["pack"]!["textDigest"]!);
        Assert.DoesNotContain("Another reason.", trace.ToJsonString(), StringComparison.Ordinal);
        Assert.Null((await service.GetJsonAsync($"{address}/trace"))["again"]);
        var record = await service.GetJsonAsync(address);
        Assert.Equal(digest, (string)record["pack"]!["textDigest"]!);
        Assert.Equal(("S-7F3K", "S-7F3K"), ((string)record["study"]!["study"]!, (string)record["reading"]!["study"]!));
    }

    [Fact]
    public async Task An_erased_reading_is_proven_and_no_longer_repeated()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        var address = await RecordAsync(service, Studies.FullThickness);
        var id = Guid.Parse(address[^36..]);
        await Ledger(service).EraseAsync(new ErasureRequest { Actor = "test", Reason = "asked", Records = [id] });

        using var trace = await service.Client.GetAsync($"{address}/trace");
        await trace.IsProblemAsync(HttpStatusCode.Gone, "FR7056");
        var record = await service.GetJsonAsync(address);
        Assert.Equal((true, null, null), ((bool)record["isErased"]!, record["study"], record["reading"]));
        Assert.NotNull((await service.GetJsonAsync($"{address}/proof"))["header"]);
    }

    [Fact]
    public async Task Proofs_lead_from_the_record_to_the_signed_head_and_from_an_old_head_to_the_new()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        var address = await RecordAsync(service, Studies.FullThickness);
        var old = SignedTreeHead.Read(await service.Client.GetByteArrayAsync("/v1/ledger/tree-head"))!;
        for (var i = 0; i < 5; i++) await RecordAsync(service, Studies.FullThickness.Replace("S-7F3K", $"S-{i}", StringComparison.Ordinal));

        var proof = await service.GetJsonAsync($"{address}/proof");
        var head = SignedTreeHead.Read(Encoding.UTF8.GetBytes(proof["head"]!.ToJsonString()))!;
        Assert.True(head.IsSignedBy(KeyOf(await service.Client.GetStringAsync("/v1/ledger/public-key"))));
        Assert.True(ProofVerifier.IsIncluded(
            (ulong)(long)proof["index"]!, (ulong)head.Size, TreeHash.Leaf(Encoding.UTF8.GetBytes((string)proof["header"]!)),
            Hashes(proof["path"]!), Convert.FromHexString(head.Root)));
        var consistency = await service.GetJsonAsync($"/v1/ledger/consistency?from={old.Size}&to={head.Size}");
        Assert.True(ProofVerifier.IsConsistent(
            (ulong)old.Size, (ulong)head.Size, Convert.FromHexString(old.Root), Convert.FromHexString(head.Root), Hashes(consistency["path"]!)));
    }

    [Theory]
    [OnSqlite]
    [OnPostgreSql]
    public async Task Readings_are_found_page_by_page_the_newest_first(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var service = await RunningService.StartAsync(ledger: place);
        for (var i = 0; i < 7; i++) await RecordAsync(service, Studies.FullThickness.Replace("S-7F3K", $"S-{i}", StringComparison.Ordinal));
        var found = new List<string>();
        var next = "";
        do
        {
            var page = await service.GetJsonAsync($"/v1/readings?rule=CUFF-010&pack=example&from=2020-01-01&limit=3{next}");
            found.AddRange(page["records"]!.AsArray().Select(r => (string)r!["study"]!));
            next = (string?)page["next"] is { } cursor ? $"&cursor={cursor}" : "";
        }
        while (next.Length > 0);
        Assert.Equal(Enumerable.Range(0, 7).Reverse().Select(i => $"S-{i}"), found);
        Assert.Single((await service.GetJsonAsync("/v1/readings?study=S-3&topic=tear-depth&subject=right%20supraspinatus"))["records"]!.AsArray());
        Assert.Empty((await service.GetJsonAsync("/v1/readings?to=2020-01-01"))["records"]!.AsArray());
        Assert.Equal(7, (int)(await service.GetJsonAsync("/v1/rules/CUFF-010/statistics"))["total"]!["fired"]!);
    }

    [Fact]
    public async Task A_study_that_names_the_one_it_replaces_is_shown_with_it()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        var first = await RecordAsync(service, Studies.FullThickness);
        var second = await RecordAsync(service, Studies.FullThickness.Replace(
            "\"S-7F3K\",", "\"S-8\", \"supersedes\": \"S-7F3K\",", StringComparison.Ordinal));
        Assert.Equal([second[^36..]], (await service.GetJsonAsync(first))["supersededBy"]!.AsArray().Select(i => (string)i!));
        Assert.Empty((await service.GetJsonAsync(second))["supersededBy"]!.AsArray());
    }

    [Fact]
    public async Task Requests_are_recorded_as_from_whom_the_settings_name()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place, change: services =>
        {
            var settings = (ServiceSettings)services.Single(d => d.ServiceType == typeof(ServiceSettings)).ImplementationInstance!;
            services.AddSingleton(settings with { Ledger = settings.Ledger with { Actor = "ward-3" } });
        });
        var address = await RecordAsync(service, Studies.FullThickness);
        Assert.Equal("ward-3", (string?)(await service.GetJsonAsync(address))["actor"]);
        using var feedback = await service.PostAsync(
            """{ "suggestions": [{ "verdict": "accepted", "topic": "tear-depth", "subject": "right supraspinatus" }] }""", $"{address}/feedback");
        Assert.Equal(HttpStatusCode.Created, feedback.StatusCode);
        Assert.Equal("ward-3", (string?)(await service.GetJsonAsync($"{address}/feedback"))["feedback"]![0]!["actor"]);
    }

    [Fact]
    public async Task An_export_holds_every_record_in_order()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        for (var i = 0; i < 3; i++) await RecordAsync(service, Studies.FullThickness.Replace("S-7F3K", $"S-{i}", StringComparison.Ordinal));
        var lines = (await service.Client.GetStringAsync("/v1/ledger/export")).TrimEnd().Split('\n').Select(l => JsonNode.Parse(l)!).ToArray();
        Assert.Equal(Enumerable.Range(0, 4), lines.Select(l => (int)l["index"]!));
        Assert.Equal(["S-0", "S-1", "S-2"], lines.Select(l => l["content"]!["study"]).OfType<JsonNode>().Select(s => (string)s!));
        Assert.Single((await service.Client.GetStringAsync("/v1/ledger/export?from=3")).TrimEnd().Split('\n'));
    }

    [Theory]
    [InlineData("/v1/readings/S-7F3K", HttpStatusCode.BadRequest, "FR7053")]
    [InlineData("/v1/readings/01890a5d-ac96-774b-bcce-b302099a8057", HttpStatusCode.NotFound, "FR7052")]
    [InlineData("/v1/readings/01890a5d-ac96-774b-bcce-b302099a8057/trace?again=yes", HttpStatusCode.BadRequest, "FR7053")]
    [InlineData("/v1/readings/01890a5d-ac96-774b-bcce-b302099a8057/proof?size=-1", HttpStatusCode.BadRequest, "FR7053")]
    [InlineData("/v1/readings?rules=CUFF-010", HttpStatusCode.BadRequest, "FR7007")]
    [InlineData("/v1/readings?revision=0a", HttpStatusCode.BadRequest, "FR7060")]
    [InlineData("/v1/readings?from=yesterday", HttpStatusCode.BadRequest, "FR7053")]
    [InlineData("/v1/readings?rule=CUFF-010&outcome=fierd", HttpStatusCode.BadRequest, "FR7053")]
    [InlineData("/v1/readings?limit=0", HttpStatusCode.BadRequest, "FR7053")]
    [InlineData("/v1/readings?cursor=abc", HttpStatusCode.BadRequest, "FR6047")]
    [InlineData("/v1/ledger/consistency", HttpStatusCode.BadRequest, "FR7053")]
    [InlineData("/v1/ledger/consistency?from=99", HttpStatusCode.BadRequest, "FR6048")]
    [InlineData("/v1/ledger/tree-head?size=99", HttpStatusCode.BadRequest, "FR6048")]
    public async Task A_question_that_cannot_be_answered_says_why(string address, HttpStatusCode status, string code)
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        using var answer = await service.Client.GetAsync(address);
        await answer.IsProblemAsync(status, code);
    }

    [Fact]
    public async Task A_record_that_is_not_a_reading_has_no_trace()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        await service.UntilAsync(async () => (await Ledger(service).GetTreeHeadAsync())!.Size == 1);
        var withdrawal = JsonNode.Parse((await service.Client.GetStringAsync("/v1/ledger/export")).TrimEnd())!["header"]!;
        Assert.Equal("withdrawal", (string)withdrawal["kind"]!);
        using var trace = await service.Client.GetAsync($"/v1/readings/{withdrawal["id"]}/trace");
        await trace.IsProblemAsync(HttpStatusCode.NotFound, "FR7057");
    }

    [Fact]
    public async Task A_service_without_a_ledger_says_so()
    {
        await using var service = await RunningService.StartAsync();
        foreach (var address in new[] { "/v1/readings", "/v1/ledger/tree-head", $"/v1/readings/{Guid.CreateVersion7()}/proof" })
        {
            using var answer = await service.Client.GetAsync(address);
            await answer.IsProblemAsync(HttpStatusCode.NotFound, "FR7051");
        }
    }

    private static FindingRules.Ledger.RecordLedger Ledger(RunningService service) => service.Part<LedgerKeeper>().Ledger!;

    private static async Task<string> RecordAsync(RunningService service, string study)
    {
        using var answer = await service.PostAsync(study);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        return answer.Headers.Location!.ToString();
    }

    private static byte[][] Hashes(JsonNode path) => [.. path.AsArray().Select(h => Convert.FromHexString((string)h!))];

    private static PublicKey KeyOf(string pem)
    {
        var fields = System.Security.Cryptography.PemEncoding.Find(pem);
        return new PublicKey(Convert.FromBase64String(pem[fields.Base64Data]));
    }
}
