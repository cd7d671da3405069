using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json.Nodes;
using FindingRules.Service.Readings;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Service.Tests.Problems;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace FindingRules.Service.Tests.Readings;

public sealed class BatchTests
{
    private const string Batch = "/v1/readings/batch";
    private const string Lines = "application/x-ndjson";

    [Fact]
    public async Task Each_study_of_a_batch_has_the_reading_that_it_has_alone_in_its_place()
    {
        await using var service = await RunningService.StartAsync();
        var studies = Enumerable.Range(0, 1_000).Select(i => OneLine(Studies.FullThickness, $"S-{i}")).ToArray();
        var answers = await SendAsync(service, string.Join('\n', studies));
        Assert.Equal(studies.Length, answers.Length);
        foreach (var i in new[] { 0, 63, 64, 65, 500, 999 })
        {
            using var alone = await service.PostAsync(studies[i]);
            Assert.Equal($"{{\"reading\":{await alone.Content.ReadAsStringAsync()}}}", answers[i]);
        }
        Assert.Equal(Enumerable.Range(0, 1_000).Select(i => $"S-{i}"), answers.Select(a => (string)JsonNode.Parse(a)!["reading"]!["study"]!));
    }

    [Fact]
    public async Task A_line_that_is_wrong_says_so_in_its_place_and_the_others_are_read()
    {
        await using var service = await RunningService.StartAsync(limits: RunningService.Quick with { StudyBytes = 2_000 });
        string[] lines =
        [
            OneLine(Studies.FullThickness, "S-1"), "{ \"study\": ", OneLine(Studies.Misspelt, "S-3"), new string('x', 2_001),
            new string('x', 200_000), "", "\uFEFF" + OneLine(Studies.FullThickness, "S-7"), "[]", OneLine(Studies.TooLong, "S-9"),
            OneLine(Studies.FullThickness, "S-10"),
        ];
        var answers = (await SendAsync(service, string.Join("\r\n", lines) + "\r\n")).Select(a => JsonNode.Parse(a)!).ToArray();
        Assert.Equal(["S-1", null, null, null, null, "S-7", null, null, "S-10"], answers.Select(a => (string?)a["reading"]?["study"]));
        var wrong = answers.Where(a => a["noReading"] is not null).ToArray();
        Assert.Equal([2, 3, 4, 5, 8, 9], wrong.Select(a => (int)a["line"]!));
        Assert.Equal(
            ["the study has 1 error", "the study has 1 error", "the line is too long", "the line is too long", "the study has 1 error", "the study has 1 error"],
            wrong.Select(a => (string)a["noReading"]!));
        Assert.All(wrong, a => Assert.NotEmpty(a["messages"]!.AsArray()));
    }

    [Fact]
    public async Task A_line_that_is_not_utf8_says_where()
    {
        await using var service = await RunningService.StartAsync();
        using var answer = await service.PostAsync([.. "\n{ \"study\": \""u8, 0xFF, .. "\" }\n"u8], Lines, Batch);
        var none = JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
        Assert.Equal(("the line is not a text", 2), ((string?)none["noReading"], (int?)none["line"]));
    }

    [Fact]
    public async Task A_study_is_answered_before_the_next_one_is_sent()
    {
        await using var service = await RunningService.StartAsync();
        using var batch = new Conversation(service);
        foreach (var key in new[] { "S-1", "S-2" })
        {
            batch.Say(OneLine(Studies.FullThickness, key));
            await batch.HearAsync($"\"{key}\"");
        }
        batch.Finish();
        await batch.HearAsync("0");
    }

    [Fact]
    public async Task A_client_that_goes_away_leaves_room_for_the_next()
    {
        await using var service = await RunningService.StartAsync();
        for (var i = 0; i < 20; i++)
        {
            using var batch = new Conversation(service);
            batch.Say(OneLine(Studies.FullThickness, "S-1"));
            if (i % 2 == 0) await batch.HearAsync("\"S-1\"");
        }
        Assert.Single(await SendAsync(service, OneLine(Studies.FullThickness, "S-2")));
        Assert.DoesNotContain("failed:", service.Log.All, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_fault_takes_the_reading_of_one_study_only_and_quotes_nothing_of_it()
    {
        await using var service = await RunningService.StartAsync(change: services => services.AddSingleton<StudyEvaluation>(
            (pack, study, limits) => study.Content.Contains("S-2", StringComparison.Ordinal)
                ? throw new InvalidOperationException("S-2 14 mm")
                : pack.ReadWhole(study, limits)));
        var answers = await SendAsync(service, string.Join('\n', Enumerable.Range(1, 3).Select(i => OneLine(Studies.FullThickness, $"S-{i}"))));
        Assert.Equal([true, false, true], answers.Select(a => JsonNode.Parse(a)!["reading"] is not null));
        Assert.Equal("the service failed on the study", (string)JsonNode.Parse(answers[1])!["noReading"]!);
        Assert.DoesNotContain("S-2", service.Log.All, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_study_that_asks_for_another_pack_says_so_in_its_place()
    {
        await using var service = await RunningService.StartAsync();
        var other = OneLine(Studies.FullThickness, "S-1").Replace("\"S-1\",", "\"S-1\", \"pack\": \"other\",", StringComparison.Ordinal);
        foreach (var address in new[] { Batch, $"{Batch}?pack=example" })
        {
            using var answer = await service.PostAsync(Encoding.UTF8.GetBytes($"{other}\n{OneLine(Studies.FullThickness, "S-2")}"), Lines, address);
            var lines = (await answer.Content.ReadAsStringAsync()).TrimEnd().Split('\n').Select(l => JsonNode.Parse(l)!).ToArray();
            Assert.Equal([null, "S-2"], lines.Select(l => (string?)l["reading"]?["study"]));
        }
    }

    [Theory]
    [InlineData("application/json", Batch, HttpStatusCode.UnsupportedMediaType, "FR7003")]
    [InlineData(Lines, $"{Batch}?packs=example", HttpStatusCode.BadRequest, "FR7007")]
    [InlineData(Lines, $"{Batch}?pack=exampel", HttpStatusCode.NotFound, "FR7011")]
    public async Task A_batch_that_cannot_be_taken_is_a_problem(string type, string address, HttpStatusCode status, string code)
    {
        await using var service = await RunningService.StartAsync();
        using var answer = await service.PostAsync(Encoding.UTF8.GetBytes(OneLine(Studies.FullThickness, "S-1")), type, address);
        await answer.IsNoReadingAsync(status, code);
    }

    [Fact]
    public async Task Nothing_sent_is_nothing_answered()
    {
        await using var service = await RunningService.StartAsync();
        Assert.Empty(await SendAsync(service, "\n \n"));
    }

    private static string OneLine(string study, string key) =>
        study.ReplaceLineEndings("").Replace("S-7F3K", key, StringComparison.Ordinal);

    private static async Task<string[]> SendAsync(RunningService service, string lines)
    {
        using var answer = await service.PostAsync(Encoding.UTF8.GetBytes(lines), Lines, Batch);
        Assert.Equal((HttpStatusCode.OK, Lines), (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(text.Length == 0 || text.EndsWith('\n'));
        return text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }

    /// <summary>A batch of which a line is sent at a time; a client library would wait for the end before it reads.</summary>
    private sealed class Conversation : IDisposable
    {
        private readonly TcpClient _client = new();
        private readonly CancellationTokenSource _limit = new(TimeSpan.FromSeconds(20));
        private readonly StreamReader _answers;

        public Conversation(RunningService service)
        {
            _client.Connect(service.Client.BaseAddress!.Host, service.Client.BaseAddress.Port);
            _answers = new StreamReader(_client.GetStream());
            Send($"POST {Batch} HTTP/1.1\r\nHost: localhost\r\nContent-Type: {Lines}\r\nTransfer-Encoding: chunked\r\n\r\n");
        }

        public void Say(string line) => Send($"{Encoding.UTF8.GetByteCount(line) + 1:x}\r\n{line}\n\r\n");

        public void Finish() => Send("0\r\n\r\n");

        /// <summary>Passes over head and lengths, up to a line that has the words.</summary>
        public async Task HearAsync(string words)
        {
            while (await _answers.ReadLineAsync(_limit.Token) is { } line)
                if (line.Contains(words, StringComparison.Ordinal))
                    return;
            Assert.Fail($"the answer ended without {words}");
        }

        public void Dispose()
        {
            _answers.Dispose();
            _client.Dispose();
            _limit.Dispose();
        }

        private void Send(string text) => _client.GetStream().Write(Encoding.UTF8.GetBytes(text));
    }
}
