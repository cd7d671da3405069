using System.Data.Common;
using System.Globalization;
using System.Text;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Searching;

/// <summary>Positions that have the first word, from <paramref name="before"/> down to <paramref name="first"/>.</summary>
internal sealed class Walk(IReadOnlyList<long> words, long first, long before, LedgerQuery query)
{
    private const string LookedAt =
        "SELECT position FROM occurrence WHERE word = @word AND position < @before AND position >= @first "
        + "ORDER BY position DESC LIMIT @looked";

    /// <summary>Those that have all words and lie in the time, the newest first.</summary>
    public Task<List<long>> FindAsync(DbConnection connection, int most, int looked)
    {
        var sql = new StringBuilder($"SELECT c.position FROM ({LookedAt}) c");
        if (HasTime) sql.Append(" JOIN record r ON r.position = c.position");
        sql.Append(" WHERE 1 = 1");
        // A word is a number that was computed here, not a text that somebody sent.
        foreach (var word in words.Skip(1))
            sql.Append(CultureInfo.InvariantCulture,
                $" AND EXISTS (SELECT 1 FROM occurrence o WHERE o.word = {word} AND o.position = c.position)");
        if (HasTime) sql.Append(" AND r.time >= @from AND r.time < @to");
        sql.Append(" ORDER BY c.position DESC LIMIT @most");
        return connection.ListAsync(r => r.GetInt64(0), sql.ToString(), [.. Bounds(looked), ("@most", (long)most), .. Times()]);
    }

    /// <summary>Where the walk stopped for having looked at so many; null where it came to its end.</summary>
    public async Task<long?> EndAsync(DbConnection connection, int looked)
    {
        var rows = await connection.ListAsync(
            r => (Count: r.GetInt64(0), Last: r.IsDBNull(1) ? 0 : r.GetInt64(1)),
            $"SELECT count(*), min(position) FROM ({LookedAt}) c", Bounds(looked));
        return rows.Single() is { } end && end.Count == looked ? end.Last : null;
    }

    private bool HasTime => query.From is not null || query.To is not null;

    private (string Name, object? Value)[] Bounds(int looked) =>
        [("@word", words[0]), ("@before", before), ("@first", first), ("@looked", (long)looked)];

    private (string Name, object? Value)[] Times() => HasTime
        ? [("@from", query.From?.ToUnixTimeMilliseconds() ?? long.MinValue), ("@to", Ceiling(query.To))]
        : [];

    // Times are kept to the millisecond: what lies before a moment within one lies before the next one.
    private static long Ceiling(DateTimeOffset? to) => to is { } moment
        ? moment.ToUnixTimeMilliseconds() + (moment.UtcTicks % TimeSpan.TicksPerMillisecond > 0 ? 1 : 0)
        : long.MaxValue;
}
