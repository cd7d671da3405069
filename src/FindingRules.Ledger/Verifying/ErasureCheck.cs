using System.Data.Common;
using FindingRules.Ledger.Erasing;
using FindingRules.Ledger.Storage;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Ledger.Verifying;

/// <summary>Tells erased from tampered: each missing body must be spoken of by an erasure, and nothing erased may be back.</summary>
internal static class ErasureCheck
{
    /// <returns>How many records are erased.</returns>
    public static async Task<long> RunAsync(DbConnection connection, RecordCheck records, Findings findings)
    {
        var erased = Merge(records.Erased);
        foreach (var gone in Without(records.WithoutBody, erased))
            findings.Add(LedgerAuditMessages.BodyGone(findings.Ledger, gone.First, gone.Last));
        foreach (var range in erased)
            foreach (var back in await connection.ListAsync(
                r => r.GetInt64(0), "SELECT position FROM body WHERE position BETWEEN @first AND @last ORDER BY position LIMIT 100",
                ("@first", range.First), ("@last", range.Last)))
                findings.Add(LedgerAuditMessages.ErasedIsBack(findings.Ledger, back));
        return records.WithoutBody.Sum(r => r.Count) - Without(records.WithoutBody, erased).Sum(r => r.Count);
    }

    /// <summary>The same positions, in order and without overlap.</summary>
    private static List<PositionRange> Merge(List<PositionRange> ranges)
    {
        var merged = new List<PositionRange>();
        foreach (var range in ranges.OrderBy(r => r.First))
            if (merged.Count > 0 && range.First <= merged[^1].Last + 1) merged[^1] = merged[
                ^1] with
            { Last = Math.Max(merged[^1].Last, range.Last) };
            else merged.Add(range);
        return merged;
    }

    /// <summary>What is left of ranges when others are taken away; both in order and without overlap.</summary>
    private static IEnumerable<PositionRange> Without(List<PositionRange> ranges, List<PositionRange> taken)
    {
        var next = 0;
        foreach (var range in ranges)
        {
            var first = range.First;
            while (next < taken.Count && taken[next].Last < first) next++;
            for (var i = next; i < taken.Count && taken[i].First <= range.Last; i++)
            {
                if (first < taken[i].First) yield return new PositionRange(first, taken[i].First - 1);
                first = Math.Max(first, taken[i].Last + 1);
            }
            if (first <= range.Last) yield return range with { First = first };
        }
    }
}
