using FindingRules.Ledger.Feedback;
using FindingRules.Ledger.Indexing;
using Microsoft.Data.Sqlite;

namespace FindingRules.Ledger.Storage.Sqlite;

/// <summary>The commands of an index step, prepared once.</summary>
internal sealed class SqliteIndexCommands(SqliteConnection connection) : IDisposable
{
    private readonly Prepared _hour = new(
        connection,
        "INSERT INTO hour VALUES (@1, @2, @3) ON CONFLICT (hour) DO UPDATE "
        + "SET first = min(first, excluded.first), last = max(last, excluded.last)",
        3);

    private readonly Prepared _count = new(
        connection,
        "INSERT INTO tally VALUES (@1, @2, @3, @4, @5, @6, @7) ON CONFLICT DO UPDATE SET count = count + excluded.count",
        7);

    private readonly Prepared _verdict = new(
        connection,
        "INSERT INTO verdict VALUES (@1, @2, @3, @4) ON CONFLICT DO UPDATE SET rules = excluded.rules, reason = excluded.reason",
        4);

    private readonly Prepared _reached = new(connection, "UPDATE watermark SET indexed = @1", 1);

    public void Insert(IndexRows rows)
    {
        foreach (var (hour, (first, last)) in rows.Hours) _hour.Run(hour, first, last);
        foreach (var (key, count) in rows.Counts.Where(c => c.Value != 0))
            _count.Run(key.Rule, key.Pack, key.Version, key.Month, (long)key.What, key.Detail, count);
        foreach (var ((reading, suggestion), verdict) in rows.Verdicts)
            _verdict.Run(reading, suggestion, FeedbackIndexing.WriteRules(verdict.Rules), (object?)verdict.Reason ?? DBNull.Value);
        _reached.Run(rows.Indexed);
    }

    public void Dispose()
    {
        foreach (var command in (Prepared[])[_hour, _count, _verdict, _reached]) command.Dispose();
    }
}
