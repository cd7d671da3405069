using FindingRules.Ledger.Feedback;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Searching;
using FindingRules.Ledger.Withdrawing;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Ledger.Tests.Stores;

public sealed class SearchTests
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);

    [Theory, OnSqlite, OnPostgreSql]
    public async Task Each_question_finds_what_it_asks_for_and_nothing_else(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        for (var i = 0; i < 12; i++) await ledger.AddAsync(Entries.Reading(i, Terms(i)));
        await ledger.AddAsync(Entries.Reading(99, Terms(0)) with { IsShadow = true });

        await ExpectAsync(ledger, new LedgerQuery(), Enumerable.Range(0, 12));
        await ExpectAsync(ledger, new LedgerQuery { Rule = "A-1" }, [0, 2, 4, 6, 8, 10]);
        await ExpectAsync(ledger, new LedgerQuery { Rule = "A-1", Outcome = RuleOutcomes.Shown }, [0, 4, 8]);
        await ExpectAsync(ledger, new LedgerQuery { Rule = "A-1", Outcome = RuleOutcomes.Unknown }, [1, 3, 5, 7, 9, 11]);
        await ExpectAsync(ledger, new LedgerQuery { Rule = "A-1", Revision = "r1" }, [0, 2, 4]);
        await ExpectAsync(ledger, new LedgerQuery { Missing = "fluid" }, [1, 3, 5, 7, 9, 11]);
        await ExpectAsync(ledger, new LedgerQuery { Missing = "fluid", Rule = "B-1" }, []);
        await ExpectAsync(ledger, new LedgerQuery { Topic = "tear" }, Enumerable.Range(0, 12));
        await ExpectAsync(ledger, new LedgerQuery { Topic = "tear", Value = "v1" }, [1, 4, 7, 10]);
        await ExpectAsync(ledger, new LedgerQuery { Topic = "tear", Value = "v1", Rule = "A-1" }, [4, 10]);
        await ExpectAsync(ledger, new LedgerQuery { Subject = "right a" }, [0, 1, 2, 3, 4, 5]);
        await ExpectAsync(ledger, new LedgerQuery { Study = "S-7" }, [7]);
        await ExpectAsync(ledger, new LedgerQuery { Pack = "example" }, Enumerable.Range(0, 12));
        await ExpectAsync(ledger, new LedgerQuery { Pack = "example", PackVersion = "9" }, []);
        await ExpectAsync(ledger, new LedgerQuery { PackDigest = Entries.Pack.Pack.MeaningDigest, Subject = "right a" },
            [0, 1, 2, 3, 4, 5]);
        await ExpectAsync(ledger, new LedgerQuery { Kind = RecordKind.Shadow, Rule = "A-1" }, [0]);
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_time_has_a_first_moment_and_one_after_the_last(Store store)
    {
        using var place = new LedgerPlace(store);
        var clock = new SetClock(Noon);
        await using var ledger = await place.OpenAsync(new LedgerOptions { Time = clock });
        for (var i = 0; i < 10; i++)
        {
            // Services' clocks differ: every third record says that it is older than the one before.
            clock.Now = Noon.AddMinutes(i * 20) - (i % 3 == 2 ? TimeSpan.FromHours(2) : TimeSpan.Zero);
            await ledger.AddAsync(Entries.Reading(i, Terms(i)));
        }
        await ExpectAsync(ledger, new LedgerQuery { From = Noon, To = Noon.AddMinutes(20) }, [0]);
        await ExpectAsync(ledger, new LedgerQuery { To = Noon }, [2, 5]);
        await ExpectAsync(ledger, new LedgerQuery { From = Noon.AddMinutes(60) }, [3, 4, 6, 7, 9]);
        await ExpectAsync(ledger, new LedgerQuery { From = Noon.AddMinutes(60), Rule = "A-1" }, [4, 6]);
        await ExpectAsync(ledger, new LedgerQuery { From = Noon.AddYears(1) }, []);
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task Pages_follow_each_other_without_gap_or_overlap_while_records_are_added(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        await ledger.AddAsync(0, 23);
        var (found, query) = (new List<long>(), new LedgerQuery { Limit = 5 });
        do
        {
            var page = await ledger.SearchAsync(query);
            Assert.Null(page.Refusal);
            found.AddRange(page.Records.Select(r => r.Index));
            await ledger.AddAsync(100 + found.Count, 3);
            query = query with { Cursor = page.Next };
        }
        while (query.Cursor is not null);
        Assert.Equal(Enumerable.Range(0, 23).Reverse().Select(i => (long)i), found);
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_cursor_goes_on_with_its_own_question_only(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        await ledger.AddAsync(0, 5);
        var next = (await ledger.SearchAsync(new LedgerQuery { Limit = 2 })).Next;
        Assert.Equal("FR6047", (await ledger.SearchAsync(new LedgerQuery { Cursor = next, Pack = "example" })).Refusal!.Code);
        Assert.Equal("FR6047", (await ledger.SearchAsync(new LedgerQuery { Cursor = "x" })).Refusal!.Code);
        Assert.Equal(3, (await ledger.SearchAsync(new LedgerQuery { Cursor = next, Limit = 100 })).Records.Length);
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task An_amended_study_supersedes_and_the_earlier_reading_stays(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        var first = await ledger.AddAsync(Entries.Reading(1));
        var amended = await ledger.AddAsync(Entries.Reading(2, new IndexTerms { Study = "S-2", Supersedes = "S-1" }));
        Assert.Equal(amended.Id, Assert.Single(await ledger.FindSupersedingAsync((await ledger.FindAsync(first.Id))!)));
        Assert.Empty(await ledger.FindSupersedingAsync((await ledger.FindAsync(amended.Id))!));
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task Withdrawing_a_rule_finds_every_reading_that_rested_on_it(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        for (var i = 0; i < 6; i++) await ledger.AddAsync(Entries.Reading(i, Terms(i)));
        var withdrawal = new WithdrawalEntry { Actor = "department", Rule = "A-1", Pack = "example", Reason = "source-retracted" };
        Assert.IsType<AppendResult.Appended>(await ledger.AppendAsync(withdrawal));
        await ExpectAsync(ledger, withdrawal.Affected, [0, 2, 4]);
        await ExpectAsync(ledger, (withdrawal with { Revision = "r2" }).Affected, []);
        Assert.Single((await ledger.SearchAsync(new LedgerQuery { Kind = RecordKind.Withdrawal })).Records);
        Assert.IsType<AppendResult.Repeated>(await ledger.AppendAsync(withdrawal with { Actor = "another", Reason = "another" }));
        Assert.IsType<AppendResult.Appended>(await ledger.AppendAsync(withdrawal with { Revision = "r1" }));
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task Readings_are_found_by_the_last_feedback_on_them(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        var ids = new List<Guid>();
        for (var i = 0; i < 4; i++) ids.Add((await ledger.AddAsync(Entries.Reading(i, Terms(i)))).Id);
        await GiveAsync(ledger, ids[1], "tear", true, null);
        await GiveAsync(ledger, ids[2], "tear", false, "not-seen");
        await GiveAsync(ledger, ids[3], "tear", true, null);
        await GiveAsync(ledger, ids[3], "tear", false, "disagree");
        await ExpectAsync(ledger, new LedgerQuery { IsAccepted = true }, [1]);
        await ExpectAsync(ledger, new LedgerQuery { IsAccepted = false }, [2, 3]);
        await ExpectAsync(ledger, new LedgerQuery { IsAccepted = false, Rule = "A-1" }, [2, 3]);
        await ExpectAsync(ledger, new LedgerQuery { Reason = "not-seen" }, [2]);
        Assert.Equal(2, (await ledger.SearchAsync(new LedgerQuery { Kind = RecordKind.Feedback, About = ids[3] })).Records.Length);
    }

    private static async Task GiveAsync(RecordLedger ledger, Guid reading, string suggestion, bool isAccepted, string? reason) =>
        Assert.IsType<AppendResult.Appended>(await ledger.AppendAsync(new FeedbackEntry
        {
            Reading = reading,
            Actor = "reader",
            Suggestions = [new SuggestionFeedback(suggestion, ["A-1"], isAccepted, reason)],
            Reasons = ["not-seen", "disagree"],
        }));

    private static IndexTerms Terms(int i) => new()
    {
        Rules =
        [
            i % 2 == 0
                ? new RuleTerm("A-1", i < 6 ? "r1" : "r2", RuleOutcomes.Fired | (i % 4 == 0 ? RuleOutcomes.Shown : RuleOutcomes.None), [])
                : new RuleTerm("A-1", i < 6 ? "r1" : "r2", RuleOutcomes.Unknown, ["fluid"]),
            new RuleTerm("B-1", "r1", RuleOutcomes.Fired, []),
        ],
        Topics = [new TopicTerm("tear", $"v{i % 3}")],
        Subjects = [i < 6 ? "right a" : "left a"],
        Study = $"S-{i}",
    };

    private static async Task ExpectAsync(RecordLedger ledger, LedgerQuery query, IEnumerable<int> expected)
    {
        var page = await ledger.SearchAsync(query);
        Assert.Equal(
            expected.Select(i => $"S-{i}").Order(StringComparer.Ordinal),
                page.Records.Select(r => r.Body!.Terms.Study!).Order(StringComparer.Ordinal));
        Assert.Null(page.Next);
    }
}
