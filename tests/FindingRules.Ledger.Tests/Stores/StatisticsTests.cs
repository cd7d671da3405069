using FindingRules.Ledger.Erasing;
using FindingRules.Ledger.Feedback;
using FindingRules.Ledger.Records;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Ledger.Tests.Stores;

public sealed class StatisticsTests
{
    private static readonly DateTimeOffset October = new(2026, 10, 31, 23, 59, 0, TimeSpan.Zero);
    private static readonly string[] Reasons = ["not-seen", "disagree"];

    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_rule_is_counted_by_outcome_month_and_pack_version(Store store)
    {
        using var place = new LedgerPlace(store);
        var clock = new SetClock(October);
        await using var ledger = await place.OpenAsync(new LedgerOptions { Time = clock });
        await ledger.AddAsync(Reading(1, RuleOutcomes.Fired | RuleOutcomes.Shown));
        await ledger.AddAsync(Reading(2, RuleOutcomes.Fired | RuleOutcomes.Borderline));
        clock.Now = October.AddMinutes(1);
        await ledger.AddAsync(Reading(3, RuleOutcomes.Borderline));
        await ledger.AddAsync(Reading(4, RuleOutcomes.Unknown, "fluid", "side"));
        await ledger.AddAsync(Reading(5, RuleOutcomes.Unknown, "fluid"));
        await ledger.AddAsync(Reading(6, RuleOutcomes.Fired) with { IsShadow = true });
        await ledger.StorePackAsync(Entries.PackOf("2.0.0"));
        await ledger.AddAsync(Reading(7, RuleOutcomes.Fired) with { Pack = Entries.PackOf("2.0.0").Pack });

        var found = await ledger.GetStatisticsAsync("A-1");
        Assert.Equal((3, 1, 2, 2, 4),
            (found.Total.Fired, found.Total.Shown, found.Total.Unknown, found.Total.Borderline, found.Total.Considered));
        Assert.Equal(0.5, found.Total.BorderlineShare);
        Assert.Equal([("fluid", 2), ("side", 1)], found.Total.UnknownFor.Select(p => (p.Key, p.Value)));
        Assert.Equal(
            [("2026-10", "1.0.0", 2), ("2026-11", "1.0.0", 0), ("2026-11", "2.0.0", 1)],
            found.Months.Select(m => (m.Month, m.Version, m.Counts.Fired)));
        Assert.Empty((await ledger.GetStatisticsAsync("B-1")).Months);
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task The_last_verdict_on_a_suggestion_counts_under_each_of_its_rules(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        var reading = (await ledger.AddAsync(Reading(1, RuleOutcomes.Fired))).Id;
        await GiveAsync(ledger, reading, new("tear", ["A-1", "A-2"], true, null), new("size", ["A-1"], false, "not-seen"));
        await GiveAsync(ledger, reading, new SuggestionFeedback("tear", ["A-1", "A-2"], false, "disagree"));
        var one = (await ledger.GetStatisticsAsync("A-1")).Total;
        Assert.Equal(0, one.Accepted);
        Assert.Equal([("disagree", 1), ("not-seen", 1)], one.Overridden.Select(p => (p.Key, p.Value)));
        Assert.Equal([("disagree", 1)], (await ledger.GetStatisticsAsync("A-2")).Total.Overridden.Select(p => (p.Key, p.Value)));
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task What_was_erased_stays_counted(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        var reading = (await ledger.AddAsync(Reading(1, RuleOutcomes.Fired))).Id;
        await GiveAsync(ledger, reading, new SuggestionFeedback("tear", ["A-1"], true, null));
        await ledger.EraseAsync(new ErasureRequest { Actor = "archive", Reason = "retention", Records = [reading] });
        var total = (await ledger.GetStatisticsAsync("A-1")).Total;
        Assert.Equal((1, 1), (total.Fired, total.Accepted));
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task Feedback_that_cannot_be_recorded_says_why(Store store)
    {
        using var place = new LedgerPlace(store);
        await using var ledger = await place.OpenAsync();
        var reading = (await ledger.AddAsync(Reading(1, RuleOutcomes.Fired))).Id;
        var shadow = (await ledger.AddAsync(Reading(2, RuleOutcomes.Fired) with { IsShadow = true })).Id;
        await ExpectAsync(ledger, Guid.Empty, ["FR6040"], new SuggestionFeedback("tear", ["A-1"], true, null));
        await ExpectAsync(ledger, shadow, ["FR6040"], new SuggestionFeedback("tear", ["A-1"], true, null));
        await ExpectAsync(ledger, reading, ["FR6042"]);
        await ExpectAsync(
            ledger, reading, ["FR6043"], new SuggestionFeedback("tear", ["A-1"], true, null),
                new SuggestionFeedback("tear", [], true, null));
        await ExpectAsync(ledger, reading, ["FR6044"], new SuggestionFeedback("tear", ["A-1"], true, "disagree"));
        await ExpectAsync(ledger, reading, ["FR6045"], new SuggestionFeedback("tear", ["A-1"], false, null));
        await ExpectAsync(ledger, reading, ["FR6046"], new SuggestionFeedback("tear", ["A-1"], false, "did not see it"));
        await ledger.EraseAsync(new ErasureRequest { Actor = "archive", Reason = "retention", Records = [reading] });
        await ExpectAsync(ledger, reading, ["FR6041"], new SuggestionFeedback("tear", ["A-1"], true, null));
    }

    private static ReadingEntry Reading(int number, RuleOutcomes outcomes, params string[] missing) =>
        Entries.Reading(number, new IndexTerms { Rules = [new RuleTerm("A-1", "r1", outcomes, [.. missing])] });

    private static async Task GiveAsync(RecordLedger ledger, Guid reading, params SuggestionFeedback[] suggestions) =>
        Assert.IsType<AppendResult.Appended>(await ledger.AppendAsync(Feedback(reading, suggestions)));

    private static async Task ExpectAsync(RecordLedger ledger, Guid reading, string[] codes, params SuggestionFeedback[] suggestions)
    {
        var refused = Assert.IsType<AppendResult.Refused>(await ledger.AppendAsync(Feedback(reading, suggestions)));
        Assert.Equal(codes, refused.Messages.Select(m => m.Code));
    }

    private static FeedbackEntry Feedback(Guid reading, SuggestionFeedback[] suggestions) =>
        new() { Reading = reading, Actor = "reader", Suggestions = [.. suggestions], Reasons = [.. Reasons] };
}
