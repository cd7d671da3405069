using System.Data.Common;
using System.Text.Json;
using FindingRules.Ledger.Indexing;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Feedback;

/// <summary>
/// Counts feedback under the rules of its suggestions, in the month and pack version of the reading, and lets the
/// reading be found by it. The last
/// verdict on a suggestion counts.
/// </summary>
internal static class FeedbackIndexing
{
    public static async Task AddAsync(DbConnection connection, IndexedRecord record, IndexRows to)
    {
        if (record is not { Content: { } content, Header: { About: { } about, Pack: { } pack } }) return;
        // What was erased meanwhile is not to be found again by feedback on it.
        var reading = await connection.ScalarAsync<long?>(
            "SELECT r.position FROM record r JOIN body b ON b.position = r.position WHERE r.id = @id",
            ("@id", about.ToByteArray(bigEndian: true)));
        if (reading is not { } position) return;
        var verdicts = await ReadVerdictsAsync(connection, position, to);
        var before = WordsOf(verdicts.Values).ToHashSet();
        foreach (var feedback in FeedbackJson.Read(content))
        {
            var verdict = new StoredVerdict([.. feedback.Rules], feedback.IsAccepted ? null : feedback.Reason);
            if (verdicts.TryGetValue(feedback.Suggestion, out var earlier)) Count(earlier, about, pack, -1, to);
            Count(verdict, about, pack, 1, to);
            verdicts[feedback.Suggestion] = to.Verdicts[(position, feedback.Suggestion)] = verdict;
        }
        var after = WordsOf(verdicts.Values).ToHashSet();
        foreach (var word in after.Except(before)) to.Changes[new Occurrence(word, position)] = true;
        foreach (var word in before.Except(after)) to.Changes[new Occurrence(word, position)] = false;
    }

    /// <summary>The verdicts on a reading: those stored, and over them those of this step.</summary>
    public static async Task<Dictionary<string, StoredVerdict>> ReadVerdictsAsync(DbConnection connection, long reading, IndexRows step)
    {
        var stored = await connection.ListAsync(
            r => (Suggestion: r.GetString(0),
                Verdict: new StoredVerdict(ReadRules(r.GetString(1)), r.IsDBNull(2) ? null : r.GetString(2))),
            "SELECT suggestion, rules, reason FROM verdict WHERE reading = @reading", ("@reading", reading));
        var verdicts = stored.ToDictionary(v => v.Suggestion, v => v.Verdict, StringComparer.Ordinal);
        foreach (var ((_, suggestion), verdict) in step.Verdicts.Where(v => v.Key.Reading == reading)) verdicts[suggestion] = verdict;
        return verdicts;
    }

    public static IEnumerable<long> WordsOf(IEnumerable<StoredVerdict> verdicts)
    {
        foreach (var verdict in verdicts)
        {
            var isAccepted = verdict.Reason is null;
            yield return Word.Verdict(isAccepted);
            if (verdict.Reason is { } reason) yield return Word.Reason(reason);
            foreach (var rule in verdict.Rules) yield return Word.Verdict(isAccepted, rule);
        }
    }

    public static string WriteRules(string[] rules) => JsonSerializer.Serialize(rules);

    private static string[] ReadRules(string json) => JsonSerializer.Deserialize<string[]>(json)!;

    private static void Count(StoredVerdict verdict, Guid reading, PackReference pack, long by, IndexRows to)
    {
        var month = TermIndexing.MonthOf(TimeOf(reading));
        var (what, detail) = verdict.Reason is { } reason ? (TallyOf.Overridden, reason) : (TallyOf.Accepted, "");
        foreach (var rule in verdict.Rules.Distinct(StringComparer.Ordinal))
            to.Count(new TallyKey(rule, pack.Name, pack.Version, month, what, detail), by);
    }

    // The first 48 bits of a time-ordered id are its time. Source: RFC 9562, section 5.7.
    private static DateTimeOffset TimeOf(Guid id)
    {
        var bytes = id.ToByteArray(bigEndian: true);
        var milliseconds = 0L;
        for (var i = 0; i < 6; i++) milliseconds = (milliseconds << 8) | bytes[i];
        return DateTimeOffset.FromUnixTimeMilliseconds(milliseconds);
    }
}
