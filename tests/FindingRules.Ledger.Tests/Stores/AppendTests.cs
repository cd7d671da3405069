using System.Text;
using FindingRules.Ledger.Canonical;
using FindingRules.Ledger.Correlation;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Storage;
using FindingRules.Ledger.Withdrawing;
using FindingRules.Testing.Stores;
using Npgsql;
using Xunit;

namespace FindingRules.Ledger.Tests.Stores;

public sealed class AppendTests
{
    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_reading_comes_back_as_it_was_recorded(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        var terms = new IndexTerms
        {
            Rules = [new RuleTerm("CUFF-010", "ab12", RuleOutcomes.Fired | RuleOutcomes.Shown, []),
                new RuleTerm("CUFF-020", "cd34", RuleOutcomes.Unknown, ["right supraspinatus fluid"])],
            Topics = [new TopicTerm("tear-depth", "full-thickness")],
            Subjects = ["right supraspinatus"],
            Study = "S-7",
            Supersedes = "S-6",
        };
        var entry = Entries.Reading(7, terms) with { Correlation = TraceContext.Begin() };
        var appended = await ledger.AddAsync(entry);
        var record = (await ledger.FindAsync(appended.Id))!;
        Assert.Equal("""{"study":"S-7","value":7.5}""", Encoding.UTF8.GetString(record.Body!.Content.Span));
        Assert.Equal(entry.Reading.ToArray(), record.Body.Answer.ToArray());
        Assert.Equal(TermsJson.Write(terms), TermsJson.Write(record.Body.Terms));
        Assert.Equal((entry.Pack, entry.Engine, entry.Actor, RecordKind.Reading),
            (record.Pack, record.Engine, record.Actor, record.Kind));
        Assert.Equal(entry.Correlation, record.Correlation);
        Assert.Equal((appended.Index, appended.Time), (record.Index, record.Time));
        Assert.Equal(record.Header.ToArray(), CanonicalJson.Write(record.Header.Span));
        Assert.Null(await ledger.FindAsync(Guid.Empty));
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task Records_of_many_writers_follow_each_other_without_a_gap(Store store)
    {
        using var place = new LedgerPlace(store);
        await using (var ledger = await place.OpenAsync()) await ledger.AddAsync(0, 300);
        await using var again = await place.OpenAsync();
        await again.AddAsync(300, 300);
        var records = await again.ExportAsync().ToListAsync();
        Assert.Equal(Enumerable.Range(0, 600).Select(i => (long)i), records.Select(r => r.Index));
        Assert.Equal(600, records.Select(r => r.Id).Distinct().Count());
        Assert.Equal(600, records.Select(r => r.Body!.Terms.Study).Distinct().Count());
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_reading_of_a_pack_that_is_not_stored_is_refused(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        var failure = await Assert.ThrowsAsync<LedgerException>(() => ledger.AppendAsync(Entries.Reading(1)));
        Assert.Equal((LedgerFailure.PackMissing, "FR6015"), (failure.Failure, failure.Told.Code));
        await Assert.ThrowsAsync<ArgumentException>(() => ledger.StorePackAsync(Entries.Pack with { Files = [] }));
        Assert.True(await ledger.StorePackAsync(Entries.Pack));
        Assert.False(await ledger.StorePackAsync(Entries.Pack));
        Assert.Equal(Entries.Pack.Files[0].Bytes.ToArray(),
            (await ledger.FindPackAsync(Entries.Pack.Pack.TextDigest))!.Files.Single().Bytes.ToArray());
        Assert.Equal(Entries.Pack.Pack, (await ledger.ListPacksAsync()).Single().Pack);
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task An_append_after_closing_says_so(Store store)
    {
        using var place = new LedgerPlace(store);
        var ledger = await place.OpenAsync();
        await ledger.AddAsync(Entries.Reading(1));
        await ledger.DisposeAsync();
        var failure = await Assert.ThrowsAsync<LedgerException>(() => ledger.AppendAsync(Entries.Reading(2)));
        Assert.Equal(LedgerFailure.Closing, failure.Failure);
    }

    /// <summary>Several services that share a store say at once that a pack withdrew a rule.</summary>
    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_withdrawal_that_several_say_at_once_is_one_record(Store store)
    {
        using var place = new LedgerPlace(store);
        var ledgers = new List<RecordLedger>();
        for (var i = 0; i < 4; i++) ledgers.Add(await place.OpenAsync());
        var entry = new WithdrawalEntry { Actor = "service", Rule = "A-1", Pack = "example", Reason = "withdrawn-by-pack" };
        var results = await Task.WhenAll(Enumerable.Range(0, 40).Select(i => Task.Run(() => ledgers[i % 4].AppendAsync(entry))));
        var first = Assert.Single(results.OfType<AppendResult.Appended>()).Id;
        Assert.All(results.OfType<AppendResult.Repeated>(), r => Assert.Equal(first, r.First.Id));
        Assert.Equal(1, (await ledgers[0].GetTreeHeadAsync())!.Size);
        foreach (var ledger in ledgers) await ledger.DisposeAsync();
    }

    /// <summary>A server or user may be set to answer before the record is on disk.</summary>
    [Theory, OnPostgreSql]
    public async Task A_commit_is_on_disk_whatever_the_server_is_set_to(Store store)
    {
        using var place = new LedgerPlace(store);
        var careless = new NpgsqlConnectionStringBuilder(((LedgerLocation.PostgreSql)place.Location).ConnectionString)
        {
            Options = "-c synchronous_commit=off",
        };
        await (await place.OpenAsync()).DisposeAsync();
        await using var owner = new NpgsqlConnection(careless.ConnectionString);
        await owner.OpenAsync();
        await owner.ExecuteAsync(
            "CREATE TABLE seen (setting TEXT); CREATE FUNCTION look() RETURNS trigger LANGUAGE plpgsql AS "
            + "$$ BEGIN INSERT INTO seen VALUES (current_setting('synchronous_commit')); RETURN NULL; END $$; "
            + "CREATE TRIGGER look AFTER UPDATE ON tree FOR EACH STATEMENT EXECUTE FUNCTION look()");
        Assert.Equal("off", await owner.ScalarAsync<string>("SHOW synchronous_commit"));
        await using (var ledger = await RecordLedger.OpenAsync(
            new LedgerLocation.PostgreSql(careless.ConnectionString), new LedgerOptions { KeyFile = place.KeyFile }))
            await ledger.AddAsync(0, 3);
        Assert.Equal(["on"], await owner.ListAsync(r => r.GetString(0), "SELECT DISTINCT setting FROM seen"));
    }
}
