using System.Net;
using System.Text.Json.Nodes;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Service.Tests.Packs;

public sealed class PackWatchTests
{
    [Fact]
    public async Task A_good_change_is_taken_and_the_earlier_text_is_still_answered()
    {
        await using var service = await RunningService.StartAsync();
        var before = await service.DigestInForceAsync();
        service.Disk.Write("example", PackDisk.Changed("Nothing is left in depth."));
        await service.UntilAsync(async () => await service.DigestInForceAsync() != before);

        var earlier = Assert.Single((await service.GetJsonAsync("/v1/packs"))["earlier"]!.AsArray())!;
        Assert.Equal(before, (string?)earlier["pack"]!["textDigest"]);
        var text = await service.Client.GetStringAsync($"/v1/packs/{before}/files/rules.yaml");
        Assert.Equal(ExamplePack.Plain.TextOf("rules"), text);
        var rule = await service.GetJsonAsync($"/v1/packs/{before}/rules/CUFF-010");
        Assert.Equal("A defect that crosses the whole tendon leaves no fibres in depth.", (string?)rule["because"]);
        var now = await service.GetJsonAsync("/v1/packs/example/rules/CUFF-010");
        Assert.Equal("Nothing is left in depth.", (string?)now["because"]);
    }

    [Fact]
    public async Task A_bad_change_is_reported_and_the_old_pack_stays_until_the_mistake_is_mended()
    {
        await using var service = await RunningService.StartAsync();
        var before = await service.DigestInForceAsync();
        service.Disk.Write("example", PackDisk.Broken());
        await service.UntilAsync(async () => (await RefusedAsync(service)).Count == 1);

        var refused = (await RefusedAsync(service))[0]!;
        Assert.Equal("example", (string?)refused["folder"]);
        Assert.Equal(before, (string?)refused["kept"]!["textDigest"]);
        var message = refused["messages"]![0]!;
        Assert.Equal("rules.yaml", (string?)message["file"]);
        Assert.Contains("reangeld", (string?)message["text"], StringComparison.Ordinal);
        Assert.Contains(service.Log.Lines, l => l.StartsWith("Error", StringComparison.Ordinal) && l.Contains("reangeld", StringComparison.Ordinal));
        using var answer = await service.PostAsync(Studies.FullThickness);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);

        service.Disk.Write("example", ExamplePack.Plain);
        await service.UntilAsync(async () => (await RefusedAsync(service)).Count == 0);
        Assert.Equal(before, await service.DigestInForceAsync());
    }

    [Fact]
    public async Task A_pack_that_was_bad_from_the_start_is_reported_and_taken_once_it_is_mended()
    {
        var disk = new PackDisk();
        disk.Write("example", PackDisk.Broken());
        await using var service = await RunningService.StartAsync(disk, mustBeReady: false);
        await service.UntilAsync(async () => (await RefusedAsync(service)).Count == 1);
        Assert.Null((await RefusedAsync(service))[0]!["kept"]);
        disk.Write("example", ExamplePack.Plain);
        await service.UntilAsync(async () => (await service.Client.GetAsync("/readyz")).IsSuccessStatusCode);
    }

    [Fact]
    public async Task A_folder_that_goes_away_is_reported_and_its_pack_stays()
    {
        await using var service = await RunningService.StartAsync();
        Directory.Delete(Path.Combine(service.Disk.Root, "example"), recursive: true);
        await service.UntilAsync(async () => (await RefusedAsync(service)).Count == 1);
        Assert.Equal("FR7030", (string?)(await RefusedAsync(service))[0]!["messages"]![0]!["code"]);
        using var answer = await service.PostAsync(Studies.FullThickness);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Fact]
    public async Task A_folder_that_was_renamed_takes_its_pack_along()
    {
        await using var service = await RunningService.StartAsync();
        Directory.Move(Path.Combine(service.Disk.Root, "example"), Path.Combine(service.Disk.Root, "renamed"));
        await service.UntilAsync(async () =>
            (string?)(await service.GetJsonAsync("/v1/packs"))["inForce"]![0]!["folder"] == "renamed");
        Assert.Empty(await RefusedAsync(service));
        Assert.Empty((await service.GetJsonAsync("/v1/packs"))["earlier"]!.AsArray());
    }

    [Fact]
    public async Task A_second_folder_with_the_same_name_of_pack_is_refused_whatever_it_is_called()
    {
        await using var service = await RunningService.StartAsync();
        service.Disk.Write("a-new-one", PackDisk.Changed("Nothing is left in depth."));
        await service.UntilAsync(async () => (await RefusedAsync(service)).Count == 1);
        var refused = (await RefusedAsync(service))[0]!;
        Assert.Equal(("a-new-one", "FR7031"), ((string)refused["folder"]!, (string)refused["messages"]![0]!["code"]!));
        Assert.Equal("example", (string?)(await service.GetJsonAsync("/v1/packs"))["inForce"]!.AsArray().Single()!["folder"]);
    }

    [Fact]
    public async Task A_folder_without_a_pack_is_reported()
    {
        await using var service = await RunningService.StartAsync(new PackDisk(), mustBeReady: false);
        await service.UntilAsync(async () => (await RefusedAsync(service)).Count == 1);
        Assert.Equal("FR7032", (string?)(await RefusedAsync(service))[0]!["messages"]![0]!["code"]);
    }

    [Fact]
    public async Task So_many_earlier_packs_are_kept_and_no_more()
    {
        await using var service = await RunningService.StartAsync(limits: RunningService.Quick with { EarlierPacks = 2 });
        var digests = new List<string> { await service.DigestInForceAsync() };
        foreach (var because in new[] { "One.", "Two.", "Three." })
        {
            service.Disk.Write("example", PackDisk.Changed(because));
            await service.UntilAsync(async () => await service.DigestInForceAsync() != digests[^1]);
            digests.Add(await service.DigestInForceAsync());
        }
        var earlier = (await service.GetJsonAsync("/v1/packs"))["earlier"]!.AsArray().Select(e => (string)e!["pack"]!["textDigest"]!);
        Assert.Equal([digests[2], digests[1]], earlier);
        using var forgotten = await service.Client.GetAsync($"/v1/packs/{digests[0]}");
        Assert.Equal(HttpStatusCode.NotFound, forgotten.StatusCode);
    }

    [Fact]
    public async Task A_file_that_no_pack_may_hold_is_reported()
    {
        await using var service = await RunningService.StartAsync();
        await File.WriteAllBytesAsync(service.Disk.PathOf("example", "big.yaml"), new byte[9 * 1024 * 1024]);
        // The watcher may look while the file is still growing, and then says something else first.
        await service.UntilAsync(async () =>
            (await RefusedAsync(service)) is [{ } refused] && (string?)refused["messages"]![0]!["code"] == "FR0004");
    }

    private static async Task<JsonArray> RefusedAsync(RunningService service) =>
        (await service.GetJsonAsync("/v1/packs"))["refused"]!.AsArray();
}
