using CsCheck;
using FindingRules.Ledger.Erasing;
using FindingRules.Ledger.Signing;
using FindingRules.Ledger.Storage;
using FindingRules.Ledger.Tests.Stores;
using FindingRules.Ledger.Verifying;
using FindingRules.Testing.Stores;
using Npgsql;
using Xunit;

namespace FindingRules.Ledger.Tests.Verifying;

/// <summary>The same as in a file, done by somebody who owns the tables of a server. After each draw all is put back.</summary>
public sealed class ServerTamperingTests
{
    private const int Records = 280;
    private const string Tables = "record body tree inner_hash";

    [Theory, OnPostgreSql]
    public async Task Whatever_is_done_to_the_records_is_found_even_when_all_hashes_are_computed_anew(Store store)
    {
        using var place = new LedgerPlace(store);
        var head = await FillAsync(place);
        await using var owner = new NpgsqlConnection(((LedgerLocation.PostgreSql)place.Location).ConnectionString);
        await owner.OpenAsync();
        await owner.ExecuteAsync("ALTER TABLE record DISABLE TRIGGER ALL; ALTER TABLE body DISABLE TRIGGER ALL");
        foreach (var table in Tables.Split(' ')) await owner.ExecuteAsync($"CREATE TABLE {table}_kept AS SELECT * FROM {table}");
        Assert.Empty((await LedgerVerifier.VerifyAsync(place.Location, head)).Problems);

        await Gen.Select(Gen.Int[0, Tampering.Ways.Length - 1].Select(i => Tampering.Ways[i]), Gen.Int, Gen.Bool).SampleAsync(
            async (way, seed, isCovered) =>
        {
            await using (var transaction = await owner.BeginTransactionAsync())
            {
                await Tampering.DoAsync(owner, way, new Random(seed), isCovered);
                await transaction.CommitAsync();
            }
            var report = await LedgerVerifier.VerifyAsync(place.Location, head);
            foreach (var table in Tables.Split(' '))
                await owner.ExecuteAsync($"DELETE FROM {table}; INSERT INTO {table} SELECT * FROM {table}_kept");
            Assert.False(report.IsSound, $"{way}, covered: {isCovered}");
        }, iter: 40, threads: 1);
        Assert.Empty((await LedgerVerifier.VerifyAsync(place.Location, head)).Problems);
    }

    private static async Task<SignedTreeHead> FillAsync(LedgerPlace place)
    {
        await using var ledger = await place.OpenAsync();
        var added = await ledger.AddAsync(0, Records - 1);
        await ledger.EraseAsync(new ErasureRequest
        {
            Actor = "archive",
            Reason = "retention",
            Records = [added[17].Id, added[18].Id],
        });
        return (await ledger.GetTreeHeadAsync())!;
    }
}
