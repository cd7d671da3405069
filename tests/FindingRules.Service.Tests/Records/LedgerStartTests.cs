using FindingRules.Ledger.Records;
using FindingRules.Ledger.Searching;
using FindingRules.Service.Records;
using FindingRules.Service.Tests.Hosting;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Service.Tests.Records;

/// <summary>What the service does with its ledger by itself: open it, note withdrawals, erase what is too old.</summary>
public sealed class LedgerStartTests
{
    [Fact]
    public async Task A_ledger_that_cannot_be_opened_keeps_the_service_from_starting()
    {
        using var place = new LedgerPlace();
        await File.WriteAllTextAsync(place.Name, "This is no ledger, and it was long enough to be taken for something else.");
        Assert.Contains("FR6007", await FailAsync(place.Name), StringComparison.Ordinal);
        Assert.Contains("FR6004", await FailAsync(place.PathOf("no-such-folder/ledger.db")), StringComparison.Ordinal);
        Assert.Contains("FR6017", await FailAsync("postgresql:"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_withdrawal_is_recorded_once_for_a_ledger()
    {
        using var place = new LedgerPlace();
        for (var i = 0; i < 2; i++)
        {
            await using var service = await RunningService.StartAsync(ledger: place);
            (await service.PostAsync(Studies.FullThickness)).Dispose();
            service.Disk.Write("example", PackDisk.Changed($"Another reason {i}."));
            var digest = await service.DigestInForceAsync();
            await service.UntilAsync(async () => await service.DigestInForceAsync() != digest);
            await service.UntilAsync(async () => (await service.Part<LedgerKeeper>().Ledger!.ListPacksAsync()).Length > 1);
        }
        await using var ledger = await place.OpenAsync();
        Assert.Single((await ledger.SearchAsync(new LedgerQuery { Kind = RecordKind.Withdrawal })).Records);
        Assert.Equal(2, await ledger.CountReadingsAsync());
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task Services_that_start_at_once_record_a_withdrawal_once(Store store)
    {
        using var place = new LedgerPlace(store);
        await (await place.OpenAsync()).DisposeAsync();
        var services = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => RunningService.StartAsync(ledger: place))));
        foreach (var service in services)
        {
            (await service.PostAsync(Studies.FullThickness)).Dispose();
            // The next look keeps a pack and records its withdrawals, one after the other.
            await service.UntilAsync(async () => await service.Part<LedgerKeeper>().Ledger!.ExportAsync()
                .AnyAsync(r => r.Kind == RecordKind.Withdrawal));
        }
        foreach (var service in services) await service.DisposeAsync();
        await using var ledger = await place.OpenAsync();
        Assert.Equal(1, await ledger.ExportAsync().CountAsync(r => r.Kind == RecordKind.Withdrawal));
        Assert.Equal(services.Length, await ledger.CountReadingsAsync());
    }

    [Fact]
    public async Task What_is_older_than_it_may_be_is_erased_at_the_start()
    {
        using var place = new LedgerPlace();
        var clock = new SetClock(DateTimeOffset.UtcNow.AddDays(-40));
        await using (var before = await RunningService.StartAsync(ledger: place, change: s => s.AddClock(clock)))
            (await before.PostAsync(Studies.FullThickness)).Dispose();
        await using (var kept = await RunningService.StartAsync(ledger: place, retentionDays: 60))
            Assert.DoesNotContain(await SearchAsync(kept), r => r.IsErased);
        await using var service = await RunningService.StartAsync(ledger: place, retentionDays: 30);
        await service.UntilAsync(async () => (await SearchAsync(service)).All(r => r.IsErased));
    }

    /// <summary>Under the rules of retention every record is looked at, so one that is damaged is met at every start.</summary>
    [Fact]
    public async Task A_damaged_record_does_not_end_the_service_and_the_others_are_erased()
    {
        using var place = new LedgerPlace();
        var clock = new SetClock(DateTimeOffset.UtcNow.AddDays(-40));
        await using (var before = await RunningService.StartAsync(ledger: place, change: s => s.AddClock(clock)))
        {
            foreach (var _ in new int[3]) (await before.PostAsync(Studies.FullThickness)).Dispose();
            Assert.Equal(3, (await SearchAsync(before)).Count);
        }
        await using (var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={place.Name};Pooling=False"))
        {
            await connection.OpenAsync();
            await using var change = connection.CreateCommand();
            change.CommandText = "DROP TRIGGER record_unchanged; UPDATE record SET header = x'7B22616374' WHERE position = "
                + "(SELECT max(position) FROM record WHERE kind = 1)";
            await change.ExecuteNonQueryAsync();
        }
        await using var service = await RunningService.StartAsync(ledger: place, retentionDays: 30);
        await service.UntilAsync(() => Task.FromResult(service.Log.All.Contains("the bodies of 2 records were erased", StringComparison.Ordinal)));
        await service.UntilAsync(() => Task.FromResult(service.Log.All.Contains("1 records are old enough", StringComparison.Ordinal)));
        using var ready = await service.Client.GetAsync("/readyz");
        Assert.True(ready.IsSuccessStatusCode);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(36_601)]
    public void Ages_at_which_all_or_nothing_would_be_erased_are_refused(int days)
    {
        using var disk = PackDisk.WithExample();
        var messages = new Model.Messages.MessageBag();
        Assert.Null(ServiceHost.Build(new ServiceOptions { PackFolders = [disk.Root], RetentionDays = days }, messages));
        Assert.Contains("RetentionDays", Assert.Single(messages.Sorted()).Text, StringComparison.Ordinal);
    }

    /// <summary>Removed, and with it all that would be acknowledged from then on.</summary>
    [Fact]
    public async Task A_ledger_that_was_removed_under_the_service_takes_nothing_and_a_new_one_with_its_key_is_warned_of()
    {
        using var place = new LedgerPlace();
        await using (var service = await RunningService.StartAsync(ledger: place))
        {
            (await service.PostAsync(Studies.FullThickness)).Dispose();
            foreach (var file in new[] { "", "-wal", "-shm" }) File.Delete(place.Name + file);
            using var refused = await service.PostAsync(Studies.FullThickness);
            Assert.Equal(System.Net.HttpStatusCode.ServiceUnavailable, refused.StatusCode);
            await service.UntilAsync(async () => !(await service.Client.GetAsync("/readyz")).IsSuccessStatusCode);
            Assert.DoesNotContain("signing key that was there before", service.Log.All, StringComparison.Ordinal);
        }
        await using var again = await RunningService.StartAsync(ledger: place);
        Assert.Contains("signing key that was there before", again.Log.All, StringComparison.Ordinal);
    }

    private static async Task<IReadOnlyList<LedgerRecord>> SearchAsync(RunningService service) =>
        (await service.Part<LedgerKeeper>().Ledger!.SearchAsync(new LedgerQuery())).Records;

    private static async Task<string> FailAsync(string ledger)
    {
        using var disk = PackDisk.WithExample();
        await using var errors = new StringWriter();
        Assert.Equal(1, await ServiceHost.RunAsync(
            new ServiceOptions { PackFolders = [disk.Root], Urls = ["http://127.0.0.1:0"], Ledger = ledger }, errors));
        return errors.ToString();
    }
}
