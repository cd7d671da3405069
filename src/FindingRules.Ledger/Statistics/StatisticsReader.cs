using System.Collections.Immutable;
using System.Data.Common;
using FindingRules.Ledger.Indexing;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Statistics;

/// <summary>Adds up the tallies of a rule.</summary>
internal static class StatisticsReader
{
    /// <param name="more">What is not in the stored counts yet; null where nothing is.</param>
    public static async Task<RuleStatistics> ReadAsync(DbConnection connection, string rule, IndexRows? more = null)
    {
        var stored = await connection.ListAsync(
            Read, "SELECT rule, pack, version, month, what, detail, count FROM tally WHERE rule = @rule", ("@rule", rule));
        var rows = stored.Concat((more?.Counts ?? []).Where(c => c.Key.Rule == rule).Select(c => (c.Key, c.Value)))
            .GroupBy(c => c.Item1).Select(g => (g.Key, Count: g.Sum(c => c.Item2))).Where(c => c.Count > 0).ToArray();
        var months = rows.GroupBy(r => (r.Key.Month, r.Key.Pack, r.Key.Version)).OrderBy(g => g.Key)
            .Select(g => new RuleMonth(g.Key.Pack, g.Key.Version, g.Key.Month, Sum(g)));
        return new RuleStatistics(rule, Sum(rows), [.. months]);
    }

    private static (TallyKey Key, long Count) Read(DbDataReader row) => (
        new TallyKey(row.GetString(0), row.GetString(1), row.GetString(2), row.GetString(3), (TallyOf)row.GetInt32(4), row.GetString(5)),
        row.GetInt64(6));

    private static RuleCounts Sum(IEnumerable<(TallyKey Key, long Count)> rows)
    {
        var of = rows.ToLookup(r => r.Key.What);
        return new RuleCounts(
            Count(TallyOf.Fired), Count(TallyOf.Shown), Count(TallyOf.Unknown), ByDetail(TallyOf.Missing), Count(TallyOf.Borderline),
            Count(TallyOf.Considered), Count(TallyOf.Accepted), ByDetail(TallyOf.Overridden));

        long Count(TallyOf what) => of[what].Sum(r => r.Count);
        ImmutableSortedDictionary<string, long> ByDetail(TallyOf what) => of[what].GroupBy(r => r.Key.Detail, StringComparer.Ordinal)
            .ToImmutableSortedDictionary(g => g.Key, g => g.Sum(r => r.Count), StringComparer.Ordinal);
    }
}
