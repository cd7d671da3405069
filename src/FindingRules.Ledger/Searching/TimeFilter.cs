using System.Data.Common;
using FindingRules.Ledger.Indexing;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Searching;

/// <summary>Clocks of several services differ a little, so the hours say only where to look; the time of each record decides.</summary>
internal static class TimeFilter
{
    /// <summary>The first position of the time that is asked for, and the one after the last.</summary>
    public static async Task<(long First, long Before)> ReachAsync(DbConnection connection, LedgerQuery query)
    {
        if (query is { From: null, To: null }) return (0, long.MaxValue);
        var rows = await connection.ListAsync(
            r => r.IsDBNull(0) ? (0L, 0L) : (r.GetInt64(0), r.GetInt64(1) + 1),
            "SELECT min(first), max(last) FROM hour WHERE hour >= @from AND hour <= @to",
            ("@from", query.From is { } from ? TermIndexing.HourOf(from) : long.MinValue),
            ("@to", query.To is { } to ? TermIndexing.HourOf(to) : long.MaxValue));
        return rows.Single();
    }

    /// <summary>Those of the positions whose records lie in the time, in the same order.</summary>
    public static async Task<IReadOnlyList<long>> KeepAsync(DbConnection connection, LedgerQuery query, long[] positions)
    {
        if (query is { From: null, To: null } || positions.Length == 0) return positions;
        // Numbers that were read here, not texts that somebody sent.
        return await connection.ListAsync(
            r => r.GetInt64(0),
            $"SELECT position FROM record WHERE position IN ({string.Join(',', positions)}) AND time >= @from AND time < @to "
            + "ORDER BY position DESC",
            ("@from", Ceiling(query.From) ?? long.MinValue), ("@to", Ceiling(query.To) ?? long.MaxValue));
    }

    public static bool Takes(LedgerQuery query, DateTimeOffset time) => !(time < query.From) && !(time >= query.To);

    // Times are kept to the millisecond: what lies before a moment within one lies before the next one.
    private static long? Ceiling(DateTimeOffset? moment) => moment is { } at
        ? at.ToUnixTimeMilliseconds() + (at.UtcTicks % TimeSpan.TicksPerMillisecond > 0 ? 1 : 0)
        : null;
}
