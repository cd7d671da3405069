using System.Text;
using FindingRules.Ledger.Erasing;
using FindingRules.Ledger.Feedback;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Searching;
using FindingRules.Ledger.Storage;
using FindingRules.Ledger.Verifying;
using FindingRules.Testing.Stores;
using Microsoft.Data.Sqlite;
using Xunit;

namespace FindingRules.Ledger.Tests.Stores;

public sealed class ErasureTests
{
    private static readonly DateTimeOffset Today = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);

    [Theory, OnSqlite, OnPostgreSql]
    public async Task What_is_older_than_the_retention_loses_its_body_and_everything_else_stays(Store store)
    {
        using var place = new LedgerPlace(store);
        var clock = new SetClock(Today.AddYears(-10));
        await using var ledger = await place.OpenAsync(new LedgerOptions { Time = clock });
        var old = await ledger.AddAsync(0, 1100);
        clock.Now = Today;
        var kept = await ledger.AddAsync(2000, 5);
        var head = (await ledger.GetTreeHeadAsync())!;

        var request = new ErasureRequest { Actor = "archive", Reason = "retention", Before = Today.AddYears(-5) };
        var result = await ledger.EraseAsync(request);
        Assert.Equal((1100, 3), (result.Erased, result.Records.Length));
        Assert.Equal(0, (await ledger.EraseAsync(request)).Erased);

        var records = await ledger.ExportAsync().ToListAsync();
        Assert.All(records.Where(r => r.Kind == RecordKind.Reading), r => Assert.Equal(r.Time < Today.AddYears(-5), r.IsErased));
        Assert.Equal(3, records.Count(r => r is { Kind: RecordKind.Erasure, IsErased: false }));
        Assert.NotNull((await ledger.FindAsync(kept[0].Id))!.Body);
        var report = await LedgerVerifier.VerifyAsync(place.Location, head);
        Assert.Empty(report.Problems);
        Assert.Equal(1100, report.Erased);
        var erased = (await ledger.FindAsync(old[0].Id))!;
        Assert.True((await ledger.ProveInclusionAsync(erased)).Proof!.Holds());
        Assert.True((await ledger.ProveConsistencyAsync(head.Size)).Proof!.Holds(head));
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task Nothing_that_is_left_tells_what_the_erased_body_held(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        await ledger.StorePackAsync(Entries.Pack);
        var terms = new IndexTerms
        {
            Study = "S-1",
            Subjects = ["right a"],
            Topics = [new TopicTerm("tear", "full")],
            Rules = [new RuleTerm("A-1", "r1", RuleOutcomes.Fired, ["fluid"])],
        };
        var key = new RetryKey("report-editor", "k-1", "body"u8.ToArray());
        var reading = ((AppendResult.Appended)await ledger.AppendAsync(Entries.Reading(1, terms), key)).Id;
        await ledger.AddAsync(Entries.Reading(2, terms with { Study = "S-2" }));
        var feedback = await ledger.AppendAsync(new FeedbackEntry
        {
            Reading = reading,
            Actor = "reader",
            Reasons = ["no"],
            Suggestions = [new SuggestionFeedback("tear", ["A-1"], false, "no")],
        });
        var result = await ledger.EraseAsync(new ErasureRequest { Actor = "archive", Reason = "requested", Records = [reading] });
        Assert.Equal(2, result.Erased);

        Assert.True((await ledger.FindAsync(((AppendResult.Appended)feedback).Id))!.IsErased);
        Assert.Null(await ledger.FindAsync(key));
        foreach (var query in new[]
        {
            new LedgerQuery { Rule = "A-1" }, new LedgerQuery { Topic = "tear" }, new LedgerQuery { Subject = "right a" },
            new LedgerQuery { Missing = "fluid" }, new LedgerQuery { Rule = "A-1", Revision = "r1" },
        })
            Assert.Equal("S-2", Assert.Single((await ledger.SearchAsync(query)).Records).Body!.Terms.Study);
        foreach (var query in new[] { new LedgerQuery { Study = "S-1" }, new LedgerQuery { IsAccepted = false },
            new LedgerQuery { Reason = "no" } })
            Assert.Empty((await ledger.SearchAsync(query)).Records);
        Assert.Equal(2, (await ledger.SearchAsync(new LedgerQuery { Pack = "example" })).Records.Length);
    }

    /// <summary>Not even the bytes of the file, or of its log, hold what was erased.</summary>
    [Fact]
    public async Task Erased_bytes_are_gone_from_the_file()
    {
        using var place = new LedgerPlace(Store.Sqlite);
        var path = ((LedgerLocation.SqliteFile)place.Location).Path;
        await using var ledger = await place.OpenAsync();
        var reading = await ledger.AddAsync(Entries.Reading(1) with { Reading = "\"a-very-telling-answer\""u8.ToArray() });
        await ledger.AddAsync(2, 50);
        Assert.True(Holds(path, "a-very-telling-answer"));
        await ledger.EraseAsync(new ErasureRequest { Actor = "archive", Reason = "requested", Records = [reading.Id] });
        Assert.False(Holds(path, "a-very-telling-answer"));
    }

    /// <summary>A backup, a shell: as long as it reads, what was erased is in the log beside the file, and that is not hidden.</summary>
    [Fact]
    public async Task Erased_bytes_go_when_whoever_reads_them_lets_go()
    {
        using var place = new LedgerPlace(Store.Sqlite);
        await using var ledger = await place.OpenAsync();
        var reading = await ledger.AddAsync(Entries.Reading(1) with { Reading = "\"a-very-telling-answer\""u8.ToArray() });
        await ledger.AddAsync(2, 50);
        Assert.Single((await ledger.SearchAsync(new LedgerQuery { Study = "S-1" })).Records);
        await using (var reader = new SqliteConnection($"Data Source={place.Name};Pooling=false;Mode=ReadOnly"))
        {
            await reader.OpenAsync();
            await reader.ExecuteAsync("BEGIN; SELECT count(*) FROM body");
            var result = await ledger.EraseAsync(new ErasureRequest { Actor = "archive", Reason = "requested", Records = [reading.Id] });
            Assert.Equal((1, false), (result.Erased, result.AreBytesGone));
            Assert.True(Holds(place.Name, "a-very-telling-answer"));
        }
        for (var wait = 0; wait < 100 && Holds(place.Name, "a-very-telling-answer"); wait++) await Task.Delay(100);
        Assert.False(Holds(place.Name, "a-very-telling-answer"));
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task Two_services_that_erase_at_once_record_each_erasure_once(Store store)
    {
        using var place = new LedgerPlace(store);
        var clock = new SetClock(Today.AddYears(-10));
        await using var one = await place.OpenAsync(new LedgerOptions { Time = clock });
        await using var other = await place.OpenAsync(new LedgerOptions { Time = clock });
        await one.AddAsync(0, 1200);
        var request = new ErasureRequest { Actor = "archive", Reason = "retention", Before = Today };
        var results = await Task.WhenAll(one.EraseAsync(request), other.EraseAsync(request));
        Assert.Equal(1200, results.Sum(r => r.Erased));
        Assert.Equal(3, results.Sum(r => r.Records.Length));
    }

    [Fact]
    public async Task Feedback_goes_with_its_reading_only_and_reasons_are_codes()
    {
        using var place = new LedgerPlace(Store.Sqlite);
        await using var ledger = await place.OpenAsync();
        var reading = await ledger.AddAsync(Entries.Reading(1));
        var feedback = Assert.IsType<AppendResult.Appended>(await ledger.AppendAsync(new FeedbackEntry
        {
            Reading = reading.Id,
            Actor = "reader",
            Reasons = ["no"],
            Suggestions = [new SuggestionFeedback("tear", ["A-1"], false, "no")],
        }));
        var request = new ErasureRequest { Actor = "archive", Reason = "requested", Records = [feedback.Id] };
        Assert.Equal(0, (await ledger.EraseAsync(request)).Erased);
        Assert.Single((await ledger.SearchAsync(new LedgerQuery { Reason = "no" })).Records);
        foreach (var wrong in new[] { request with { Reason = "asked by a patient" }, request with { Actor = "Jo" } })
            await Assert.ThrowsAsync<ArgumentException>(() => ledger.EraseAsync(wrong));
    }

    private static bool Holds(string path, string text) =>
        Directory.GetFiles(Path.GetDirectoryName(path)!, $"{Path.GetFileName(path)}*").Any(file =>
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray().AsSpan().IndexOf(Encoding.UTF8.GetBytes(text)) >= 0;
    });
}
