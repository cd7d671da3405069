using System.Diagnostics;
using FindingRules.Ledger;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Searching;

namespace FindingRules.Benchmarks.Ledger;

/// <summary>Fills a ledger, waits for its index, and asks what auditors ask.</summary>
internal static class SearchTimes
{
    private static readonly TimeSpan Patience = TimeSpan.FromHours(2);

    public static LedgerOptions Options => new() { IndexWait = Patience };

    public static async Task FillAsync(RecordLedger ledger, int records)
    {
        await ledger.StorePackAsync(SampleRecords.Pack);
        await Parallel.ForAsync(0, records, new ParallelOptions { MaxDegreeOfParallelism = 256 }, async (i, cancellation) =>
            await ledger.AppendAsync(SampleRecords.Reading(i), cancellation: cancellation));
    }

    /// <summary>Milliseconds of each question, sorted, by what is asked.</summary>
    public static async Task<IEnumerable<(string Name, double[] Milliseconds)>> AskAsync(RecordLedger ledger, int records, int times)
    {
        var questions = Questions(records);
        var waits = questions.ToDictionary(q => q.Name, _ => new List<double>(), StringComparer.Ordinal);
        for (var i = 0; i < times; i++)
            foreach (var (name, query) in questions)
            {
                var began = Stopwatch.GetTimestamp();
                await ledger.SearchAsync(query(i));
                waits[name].Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
            }
        return questions.Select(q => (q.Name, waits[q.Name].Order().ToArray()));
    }

    private static (string Name, Func<int, LedgerQuery> Query)[] Questions(int records) =>
    [
        ("the newest", _ => new LedgerQuery()),
        ("by rule", i => new LedgerQuery { Rule = Rule(i) }),
        ("by rule shown, with a value of a topic", i => new LedgerQuery
        {
            Rule = Rule(i), Outcome = RuleOutcomes.Shown, Topic = "tear-depth", Value = i % 2 == 0 ? "full-thickness" : "none",
        }),
        ("by revision and subject", i => new LedgerQuery { Rule = Rule(i), Revision = "5f3a9c01", Subject = "right biceps" }),
        ("by two frequent words that never meet", _ => new LedgerQuery { Subject = "left biceps", Pack = "benchmark" }),
        ("unknown for want of a finding", i => new LedgerQuery { Missing = $"finding-{i % 40}" }),
        ("by study", i => new LedgerQuery { Study = string.Create(
            null, $"S-{(i * 7919) % records}-{DateTimeOffset.UnixEpoch.Ticks % 997}") }),
        ("by pack and time", _ => new LedgerQuery { Pack = "benchmark", To = DateTimeOffset.MaxValue }),
        ("by feedback", _ => new LedgerQuery { IsAccepted = false }),
    ];

    private static string Rule(int i) => string.Create(null, $"RULE-{i * 37 % 400:000}");
}
