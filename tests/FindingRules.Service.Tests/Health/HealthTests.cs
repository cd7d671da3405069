using System.Net;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Service.Tests.Problems;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Service.Tests.Health;

public sealed class HealthTests
{
    [Fact]
    public async Task A_service_without_a_pack_is_alive_and_not_ready()
    {
        await using var service = await RunningService.StartAsync(new PackDisk(), mustBeReady: false);
        Assert.Equal("alive", (string?)(await service.GetJsonAsync("/healthz"))["status"]);
        using var answer = await service.Client.GetAsync("/readyz");
        await answer.IsProblemAsync(HttpStatusCode.ServiceUnavailable, "FR7010");
    }

    [Fact]
    public async Task A_service_with_a_pack_is_ready_and_names_it()
    {
        await using var service = await RunningService.StartAsync();
        var ready = await service.GetJsonAsync("/readyz");
        Assert.Equal("ready", (string?)ready["status"]);
        Assert.Equal("example", (string?)ready["packs"]![0]);
    }

    [Fact]
    public async Task A_service_becomes_ready_when_a_pack_is_put_into_its_folder()
    {
        await using var service = await RunningService.StartAsync(new PackDisk(), mustBeReady: false);
        service.Disk.Write("example", FindingRules.Testing.ExamplePack.Plain);
        await service.UntilAsync(async () => (await service.Client.GetAsync("/readyz")).IsSuccessStatusCode);
    }

    [Fact]
    public async Task A_service_whose_ledger_cannot_be_written_is_not_ready_until_it_can()
    {
        using var place = new LedgerPlace();
        await using var service = await RunningService.StartAsync(ledger: place);
        await using (var other = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={place.Name};Pooling=False"))
        {
            await other.OpenAsync();
            await using var hold = other.CreateCommand();
            hold.CommandText = "BEGIN EXCLUSIVE";
            await hold.ExecuteNonQueryAsync();
            (await service.PostAsync(Studies.FullThickness)).Dispose();
            using var answer = await service.Client.GetAsync("/readyz");
            await answer.IsProblemAsync(HttpStatusCode.ServiceUnavailable, "FR7050");
        }
        await service.UntilAsync(async () => (await service.Client.GetAsync("/readyz")).IsSuccessStatusCode);
    }

    [Fact]
    public async Task The_check_for_containers_tells_a_ready_service_from_one_that_is_not()
    {
        await using var ready = await RunningService.StartAsync();
        await using var waiting = await RunningService.StartAsync(new PackDisk(), mustBeReady: false);
        using var output = new StringWriter();
        Assert.Equal(0, await ServiceHealth.CheckAsync(ready.Client.BaseAddress!.ToString(), output));
        Assert.Equal(1, await ServiceHealth.CheckAsync(waiting.Client.BaseAddress!.ToString(), output));
        Assert.Contains("FR7010", output.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("http://127.0.0.1:1")]
    [InlineData("127.0.0.1")]
    [InlineData("ftp://127.0.0.1")]
    public async Task The_check_for_containers_says_where_nothing_answers(string url)
    {
        using var output = new StringWriter();
        Assert.Equal(1, await ServiceHealth.CheckAsync(url, output));
        Assert.Contains($"no answer from {url}", output.ToString(), StringComparison.Ordinal);
    }
}
