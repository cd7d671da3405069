using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using FindingRules.Ledger.Signing;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Service.Tests.Problems;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Service.Tests.Records;

/// <summary>What was answered can be found, explained, repeated and proven.</summary>
public sealed class AuditTests : IAsyncLifetime, IDisposable
{
    private readonly LedgerPlace _place = new();
    private RunningService _service = null!;

    public async Task InitializeAsync() => _service = await RunningService.StartAsync(ledger: _place);

    public async Task DisposeAsync() => await _service.DisposeAsync();

    public void Dispose() => _place.Dispose();

    [Fact]
    public async Task Proofs_hold_and_an_earlier_head_is_the_beginning_of_a_later_one()
    {
        var (address, _) = await RecordAsync("S-1");
        var early = SignedTreeHead.Read(await _service.Client.GetByteArrayAsync("/v1/ledger/tree-head"))!;
        for (var i = 0; i < 5; i++) await RecordAsync($"S-{i + 2}");
        var pem = await _service.Client.GetStringAsync("/v1/ledger/public-key");
        using var key = System.Security.Cryptography.ECDsa.Create();
        key.ImportFromPem(pem);
        Assert.True(early.IsSignedBy(new PublicKey(key.ExportSubjectPublicKeyInfo())));

        var proof = await _service.GetJsonAsync($"{address}/proof");
        Assert.Equal(Root((string)proof["header"]!, (long)proof["index"]!, (long)proof["head"]!["size"]!, proof["path"]!.AsArray()), (string)proof["head"]!["root"]!);
        var small = await _service.GetJsonAsync($"{address}/proof?size={early.Size}");
        Assert.Equal(early.Root, (string?)small["head"]!["root"]);
        var consistency = await _service.GetJsonAsync($"/v1/ledger/consistency?from={early.Size}");
        Assert.NotEmpty(consistency["path"]!.AsArray());
        Assert.Equal(early.Size, (long)consistency["from"]!);
        Assert.Equal(early.Root, (string?)(await _service.GetJsonAsync($"/v1/ledger/tree-head?size={early.Size}"))["root"]);
    }

    /// <summary>From the answer of the proof alone: body to commitment, header to leaf.</summary>
    [Fact]
    public async Task What_is_proven_is_the_study_and_the_answer_themselves()
    {
        var (address, reading) = await RecordAsync("S-1");
        var proof = await _service.GetJsonAsync($"{address}/proof");
        var body = proof["body"]!;
        Assert.Equal(reading, (string)body["answer"]!);
        Assert.Equal("S-1", (string)JsonNode.Parse((string)body["content"]!)!["study"]!);
        IEnumerable<byte> hashed = Convert.FromHexString((string)body["salt"]!);
        foreach (var part in new[] { "content", "answer", "terms" }.Select(p => Encoding.UTF8.GetBytes((string)body[p]!)))
            hashed = [.. hashed, .. BitConverter.GetBytes((long)part.Length).Reverse(), .. part];
        Assert.Equal(
            (string)JsonNode.Parse((string)proof["header"]!)!["commitment"]!,
            Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData([.. hashed])));
    }

    /// <summary>Not even to a retry, which would take it for the first answer.</summary>
    [Fact]
    public async Task An_answer_that_was_changed_in_the_store_is_not_given_out()
    {
        var (address, _) = await RecordAsync("S-1", "key-1");
        await using (var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={_place.Name};Pooling=False"))
        {
            await connection.OpenAsync();
            await using var change = connection.CreateCommand();
            change.CommandText = "DROP TRIGGER body_unchanged; "
                + "UPDATE body SET answer = CAST(replace(CAST(answer AS TEXT), 'full-thickness', 'full-thicknesz') AS BLOB)";
            await change.ExecuteNonQueryAsync();
        }
        foreach (var asked in new[] { address, $"{address}/proof", $"{address}/trace" })
        {
            using var answer = await _service.Client.GetAsync(asked);
            await answer.IsProblemAsync(HttpStatusCode.ServiceUnavailable, "FR7050");
        }
        using var again = await SendAsync("S-1", "key-1");
        await again.IsNoReadingAsync(HttpStatusCode.ServiceUnavailable, "FR7050");
    }

    [Fact]
    public async Task Whose_suggestions_were_accepted_is_found_with_what_became_of_the_rule()
    {
        var (address, _) = await RecordAsync("S-1");
        using var feedback = await _service.PostAsync(
            """{ "suggestions": [{ "topic": "tear-depth", "subject": "right supraspinatus", "verdict": "accepted" }] }""", $"{address}/feedback");
        Assert.Equal(HttpStatusCode.Created, feedback.StatusCode);
        foreach (var (query, found) in new[] { ("", 1), ("&outcome=fired", 1), ("&outcome=unknown", 0) })
            Assert.Equal(found, (await _service.GetJsonAsync($"/v1/readings?rule=CUFF-010&accepted=true{query}"))["records"]!.AsArray().Count);
    }

    [Theory]
    [InlineData("rule=CUFF-010", true)]
    [InlineData("rule=CUFF-010&outcome=shown", true)]
    [InlineData("rule=CUFF-010&outcome=unknown", false)]
    [InlineData("rule=CUFF-010&outcome=fired&missing=tear-length", false)]
    [InlineData("topic=tear-depth", true)]
    [InlineData("topic=tear-depth&value=full-thickness", true)]
    [InlineData("topic=tear-depth&value=bursal-sided", false)]
    [InlineData("subject=right supraspinatus&study=S-1", true)]
    [InlineData("subject=left supraspinatus", false)]
    [InlineData("pack=example&version=1.0.0", true)]
    [InlineData("pack=other", false)]
    [InlineData("from=2020-01-01&to=2120-01-01T00:00:00Z", true)]
    [InlineData("to=2020-01-01", false)]
    [InlineData("accepted=true", false)]
    public async Task A_reading_is_found_by_what_is_asked(string query, bool isFound)
    {
        var (address, _) = await RecordAsync("S-1");
        var found = (await _service.GetJsonAsync($"/v1/readings?{query}"))["records"]!.AsArray();
        Assert.Equal(isFound ? [address] : [], found.Select(r => (string)r!["url"]!));
    }

    [Fact]
    public async Task Pages_lead_on_to_every_reading_once()
    {
        for (var i = 0; i < 7; i++) await RecordAsync($"S-{i}");
        var keys = new List<string>();
        for (var next = "/v1/readings?rule=CUFF-010&limit=3"; next is not null;)
        {
            var page = await _service.GetJsonAsync(next);
            keys.AddRange(page["records"]!.AsArray().Select(r => (string)r!["study"]!));
            next = page["next"] is { } cursor ? $"/v1/readings?rule=CUFF-010&limit=3&cursor={cursor}" : null;
        }
        Assert.Equal(Enumerable.Range(0, 7).Reverse().Select(i => $"S-{i}"), keys);
    }

    [Theory]
    [InlineData("/v1/readings?rul=X", 400, "FR7007")]
    [InlineData("/v1/readings?from=yesterday", 400, "FR7053")]
    [InlineData("/v1/readings?limit=0", 400, "FR7053")]
    [InlineData("/v1/readings?revision=abc", 400, "FR7060")]
    [InlineData("/v1/readings?cursor=abc", 400, "FR6047")]
    [InlineData("/v1/readings/S-1", 400, "FR7053")]
    [InlineData("/v1/readings/0198c5a0-7d3e-7c41-9a55-6f2f0d4b8e11", 404, "FR7052")]
    [InlineData("/v1/readings/0198c5a0-7d3e-7c41-9a55-6f2f0d4b8e11/trace?again=perhaps", 400, "FR7053")]
    [InlineData("/v1/ledger/tree-head?size=100", 400, "FR6048")]
    [InlineData("/v1/ledger/consistency", 400, "FR7053")]
    [InlineData("/v1/ledger/consistency?from=100", 400, "FR6048")]
    [InlineData("/v1/ledger/export?since=1", 400, "FR7007")]
    public async Task What_cannot_be_asked_is_a_problem(string address, int status, string code)
    {
        using var answer = await _service.Client.GetAsync(address);
        await answer.IsProblemAsync((HttpStatusCode)status, code);
    }

    private async Task<HttpResponseMessage> SendAsync(string study, string? retryKey)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/readings")
        {
            Content = new StringContent(Studies.FullThickness.Replace("S-7F3K", study, StringComparison.Ordinal), Encoding.UTF8, "application/json"),
        };
        if (retryKey is not null) request.Headers.Add("Idempotency-Key", retryKey);
        return await _service.Client.SendAsync(request);
    }

    private async Task<(string Address, string Reading)> RecordAsync(string study, string? retryKey = null)
    {
        using var answer = await SendAsync(study, retryKey);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        return (answer.Headers.Location!.ToString(), await answer.Content.ReadAsStringAsync());
    }

    // RFC 9162, section 2.1.3.2, written anew.
    private static string Root(string header, long index, long size, JsonArray path)
    {
        var hash = System.Security.Cryptography.SHA256.HashData([0, .. Encoding.UTF8.GetBytes(header)]);
        var (at, last) = (index, size - 1);
        foreach (var step in path.Select(p => Convert.FromHexString((string)p!)))
        {
            if (at % 2 == 1 || at == last)
            {
                hash = System.Security.Cryptography.SHA256.HashData([1, .. step, .. hash]);
                while (at % 2 == 0 && at != 0) (at, last) = (at >> 1, last >> 1);
            }
            else hash = System.Security.Cryptography.SHA256.HashData([1, .. hash, .. step]);
            (at, last) = (at >> 1, last >> 1);
        }
        return Convert.ToHexStringLower(hash);
    }
}
