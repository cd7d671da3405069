using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Storage;
using FindingRules.Ledger.Verifying;
using FindingRules.Testing.Stores;
using Microsoft.Data.Sqlite;
using Xunit;

namespace FindingRules.Ledger.Tests.Stores;

/// <summary>
/// No room: SQLite is given a bound on its pages and reports the same as on a full disk. Somebody else's table that
/// comes and goes makes and takes the room.
/// </summary>
public sealed class FullTests
{
    private const int MostPages = 400;

    [Fact]
    public async Task Without_room_appends_fail_cleanly_and_go_on_by_themselves_when_there_is_room()
    {
        using var place = new LedgerPlace(Store.Sqlite);
        await using var ledger = await place.OpenAsync(new LedgerOptions { MostPages = MostPages });
        await using var other = new SqliteConnection($"Data Source={((LedgerLocation.SqliteFile)place.Location).Path};Pooling=false");
        await other.OpenAsync();
        await other.ExecuteAsync($"PRAGMA max_page_count = {MostPages}; CREATE TABLE ballast AS SELECT zeroblob(1000000) AS bytes");
        await ledger.StorePackAsync(Entries.Pack);

        var acknowledged = new List<Guid>();
        var refused = await FillAsync(ledger, acknowledged);
        Assert.All(refused, e => Assert.Equal((LedgerFailure.Full, "FR6001"), (e.Failure, e.Told.Code)));
        await CheckAsync(place, ledger, acknowledged);

        await other.ExecuteAsync("DROP TABLE ballast");
        acknowledged.Add((await ledger.AddAsync(Entries.Reading(1_000_000))).Id);
        await CheckAsync(place, ledger, acknowledged);
        Assert.NotEmpty(await FillAsync(ledger, acknowledged));
        await CheckAsync(place, ledger, acknowledged);
    }

    private static async Task<List<LedgerException>> FillAsync(RecordLedger ledger, List<Guid> acknowledged)
    {
        var refused = new List<LedgerException>();
        for (var round = 0; refused.Count == 0; round++)
        {
            Assert.True(round < 1000, "it never became full");
            await Task.WhenAll(Enumerable.Range(0, 20).Select(async i =>
            {
                try
                {
                    var id = ((AppendResult.Appended)await ledger.AppendAsync(Entries.Reading((round * 20) + i))).Id;
                    lock (acknowledged) acknowledged.Add(id);
                }
                catch (LedgerException e)
                {
                    lock (refused) refused.Add(e);
                }
            }));
        }
        return refused;
    }

    private static async Task CheckAsync(LedgerPlace place, RecordLedger ledger, List<Guid> acknowledged)
    {
        var records = await ledger.ExportAsync().Select(r => r.Id).ToListAsync();
        Assert.Equal(acknowledged.Order(), records.Order());
        var report = await LedgerVerifier.VerifyAsync(place.Location, await ledger.GetTreeHeadAsync());
        Assert.Empty(report.Problems);
    }
}
