using FindingRules.Ledger.Erasing;
using FindingRules.Ledger.Verifying;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Ledger.Tests.Stores;

public sealed class VerifyTests
{
    [Theory, OnSqlite, OnPostgreSql]
    public async Task An_untouched_ledger_is_sound_and_a_head_covers_what_it_was_signed_for(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        await ledger.AddAsync(0, 270);
        var head = (await ledger.GetTreeHeadAsync())!;
        await ledger.AddAsync(270, 30);
        var report = await LedgerVerifier.VerifyAsync(place.Location, head);
        Assert.Empty(report.Problems);
        Assert.True(report.IsSound);
        Assert.Equal((300, 270, 0), (report.Records, report.Covered, report.Erased));
        Assert.Equal((await ledger.GetTreeHeadAsync())!.Root, report.Root);
        Assert.Equal(0, (await LedgerVerifier.VerifyAsync(place.Location)).Covered);
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_head_that_was_changed_or_is_of_another_ledger_vouches_for_nothing(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        await ledger.AddAsync(0, 10);
        var head = (await ledger.GetTreeHeadAsync())!;
        using var elsewhere = new LedgerPlace(Store.Sqlite);
        await using var other = await elsewhere.OpenAsync();
        await other.AddAsync(0, 10);
        Assert.Equal(["FR6025"], await FindAsync(place, head with { Size = 9 }));
        Assert.Equal(["FR6026"], await FindAsync(place, (await other.GetTreeHeadAsync())!));
        Assert.Equal(["FR6026"], await FindAsync(place, head with { Ledger = other.Id }));
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task An_erased_record_is_told_from_a_tampered_one(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        var added = await ledger.AddAsync(0, 20);
        var head = (await ledger.GetTreeHeadAsync())!;
        var erasure = new ErasureRequest { Actor = "archive", Reason = "retention", Records = [added[3].Id, added[4].Id, added[9].Id] };
        Assert.Equal(3, (await ledger.EraseAsync(erasure)).Erased);
        var report = await LedgerVerifier.VerifyAsync(place.Location, head);
        Assert.Empty(report.Problems);
        Assert.Equal((3, 3), (report.Erased, report.ErasedAfterHead));
        var later = await LedgerVerifier.VerifyAsync(place.Location, await ledger.GetTreeHeadAsync());
        Assert.Equal((3, 0), (later.Erased, later.ErasedAfterHead));
    }

    private static async Task<string[]> FindAsync(LedgerPlace place, Signing.SignedTreeHead head) =>
        [.. (await LedgerVerifier.VerifyAsync(place.Location, head)).Problems.Select(p => p.Code)];
}
