using FindingRules.Ledger.Records;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Ledger.Tests.Stores;

public sealed class RetryTests
{
    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_retry_gets_the_first_record(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        await ledger.StorePackAsync(Entries.Pack);
        var key = new RetryKey("report-editor", "k-1", "body"u8.ToArray());
        Assert.Null(await ledger.FindAsync(key));
        var first = (AppendResult.Appended)await ledger.AppendAsync(Entries.Reading(1), key);
        var again = (AppendResult.Repeated)await ledger.AppendAsync(Entries.Reading(1), key);
        Assert.Equal(first.Id, again.First.Id);
        Assert.Equal(first.Id, ((AppendResult.Repeated)(await ledger.FindAsync(key))!).First.Id);
        Assert.Equal(1, (await ledger.GetTreeHeadAsync())!.Size);
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_key_used_for_another_request_is_told_apart(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        await ledger.StorePackAsync(Entries.Pack);
        var key = new RetryKey("report-editor", "k-1", "body"u8.ToArray());
        var first = (AppendResult.Appended)await ledger.AppendAsync(Entries.Reading(1), key);
        var other = key with { Request = "another body"u8.ToArray() };
        Assert.Equal(new AppendResult.KeyTaken(first.Id), await ledger.AppendAsync(Entries.Reading(2), other));
        Assert.Equal(new AppendResult.KeyTaken(first.Id), await ledger.FindAsync(other));
        Assert.IsType<AppendResult.Appended>(await ledger.AppendAsync(Entries.Reading(2), other with { Actor = "another editor" }));
        Assert.IsType<AppendResult.Appended>(await ledger.AppendAsync(Entries.Reading(3), other with { Key = "k-2" }));
        Assert.Equal(3, (await ledger.GetTreeHeadAsync())!.Size);
    }

    [Fact]
    public void Keys_of_different_scopes_never_meet()
    {
        var key = new RetryKey("a", "k", "body"u8.ToArray());
        RetryKey[] others = [key with { Scope = "feedback" }, key with { Scope = "fee", Key = "dbackk" }, key with { Key = "8:feedbackk" },
            key with { Actor = "a8:feedback" }];
        Assert.Equal(5, others.Append(key).Select(k => Convert.ToHexString(k.ToMark().Key)).Distinct().Count());
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task Of_requests_with_one_key_that_come_at_once_one_is_recorded(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var one = await place.OpenAsync();
        await using var other = await place.OpenAsync();
        await one.StorePackAsync(Entries.Pack);
        var results = await Task.WhenAll(Enumerable.Range(0, 200).Select(i => (i % 2 == 0 ? one : other).AppendAsync(
            Entries.Reading(i % 5), new RetryKey("report-editor", $"k-{i % 5}", "body"u8.ToArray()))));
        Assert.Equal(5, results.OfType<AppendResult.Appended>().Count());
        Assert.Equal(195, results.OfType<AppendResult.Repeated>().Count());
        Assert.Equal(5, (await one.GetTreeHeadAsync())!.Size);
        Assert.Equal(5, results.Select(r =>
            r is AppendResult.Appended a ? a.Id : ((AppendResult.Repeated)r).First.Id).Distinct().Count());
    }
}
