using System.Data.Common;
using FindingRules.Ledger.Erasing;
using FindingRules.Ledger.Storage;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Ledger.Verifying;

/// <summary>Tells erased from tampered: each missing body must be spoken of by an erasure, and nothing erased may be back.</summary>
internal static class ErasureCheck
{
    /// <param name="covered">For so many records the tree head vouches: for erasures after them nothing does.</param>
    public static async Task<ErasureCount> RunAsync(DbConnection connection, RecordCheck records, long covered, Findings findings)
    {
        var erased = Merge(records.Erased.Select(e => e.Range));
        var gone = Without(records.WithoutBody, erased).ToList();
        foreach (var range in gone) findings.Add(LedgerAuditMessages.BodyGone(findings.Ledger, range.First, range.Last));
        foreach (var range in erased)
            foreach (var back in await connection.ListAsync(
                r => r.GetInt64(0), "SELECT position FROM body WHERE position BETWEEN @first AND @last ORDER BY position LIMIT 100",
                ("@first", range.First), ("@last", range.Last)))
                findings.Add(LedgerAuditMessages.ErasedIsBack(findings.Ledger, back));
        var vouchedFor = Merge(records.Erased.Where(e => e.By < covered).Select(e => e.Range));
        List<PositionRange> afterHead = [new(covered, long.MaxValue)];
        var unvouched = Without([.. Without([.. Without(records.WithoutBody, gone)], vouchedFor)], afterHead);
        return new ErasureCount(Count(records.WithoutBody) - Count(gone), Count(unvouched));
    }

    private static long Count(IEnumerable<PositionRange> ranges) => ranges.Sum(r => r.Count);

    /// <summary>The same positions, in order and without overlap.</summary>
    private static List<PositionRange> Merge(IEnumerable<PositionRange> ranges)
    {
        var merged = new List<PositionRange>();
        foreach (var range in ranges.OrderBy(r => r.First))
            if (merged.Count > 0 && range.First <= merged[^1].Last + 1)
                merged[^1] = merged[^1] with { Last = Math.Max(merged[^1].Last, range.Last) };
            else
                merged.Add(range);
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

/// <param name="All">How many bodies are gone and an erasure says so.</param>
/// <param name="Unvouched">How many of them are of records that the tree head covers, erased by records that it does not.</param>
internal readonly record struct ErasureCount(long All, long Unvouched);
