using System.Collections.Concurrent;
using System.Net;
using System.Text.Json.Nodes;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Service.Tests.Packs;

/// <summary>Packs change while studies are read.</summary>
public sealed class SwapTests
{
    private const int Swaps = 6;
    private const int Readers = 4;

    [Fact]
    public async Task No_request_fails_and_each_reading_comes_from_one_pack()
    {
        await using var service = await RunningService.StartAsync();
        var expected = Texts().ToDictionary(p => p.Compile().Pack.TextDigest, p => Marker(p.TextOf("topics")));
        var seen = new ConcurrentDictionary<string, int>();
        using var end = new CancellationTokenSource();
        var readers = Enumerable.Range(0, Readers).Select(_ => Task.Run(() => ReadOnAsync(service, expected, seen, end.Token))).ToArray();

        for (var i = 0; i < Swaps; i++)
        {
            var next = Texts().ElementAt(i % 2);
            var digest = next.Compile().Pack.TextDigest;
            service.Disk.Write("example", next);
            await service.UntilAsync(async () => await service.DigestInForceAsync() == digest);
            service.Disk.Write("example", PackDisk.Broken());
            await service.UntilAsync(async () => (await service.GetJsonAsync("/v1/packs"))["refused"]!.AsArray().Count == 1);
            Assert.Equal(digest, await service.DigestInForceAsync());
        }
        await end.CancelAsync();
        await Task.WhenAll(readers);
        Assert.Equal(2, seen.Count(s => expected.ContainsKey(s.Key)));
    }

    /// <summary>Two packs whose readings can be told apart by their words.</summary>
    private static IEnumerable<ExamplePack> Texts() =>
    [
        Worded("Full-thickness tear (one) of the {subject}"),
        Worded("Full-thickness tear (two) of the {subject}"),
    ];

    private static ExamplePack Worded(string says) => ExamplePack.Plain.Replace("topics", ExamplePack.Plain.TextOf("topics")
        .Replace("Full-thickness tear of the {subject}", says, StringComparison.Ordinal));

    private static string Marker(string topics) => topics.Contains("(one)", StringComparison.Ordinal) ? "(one)" : "(two)";

    private static async Task ReadOnAsync(
        RunningService service, Dictionary<string, string> expected, ConcurrentDictionary<string, int> seen, CancellationToken end)
    {
        while (!end.IsCancellationRequested)
        {
            using var answer = await service.PostAsync(Studies.FullThickness);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            var reading = JsonNode.Parse(await answer.Content.ReadAsStringAsync(CancellationToken.None))!;
            var digest = (string)reading["pack"]!["textDigest"]!;
            seen.AddOrUpdate(digest, 1, (_, n) => n + 1);
            if (!expected.TryGetValue(digest, out var marker)) continue;
            Assert.Contains(marker, (string?)reading["suggestions"]![0]!["text"], StringComparison.Ordinal);
            Assert.Contains(marker, (string?)reading["impressionText"], StringComparison.Ordinal);
        }
    }
}
