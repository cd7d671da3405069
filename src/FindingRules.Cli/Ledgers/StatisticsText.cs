using System.Collections.Immutable;
using System.Globalization;
using FindingRules.Ledger.Statistics;

namespace FindingRules.Cli.Ledgers;

/// <summary>The counts of a rule as a table, and below it what has reasons.</summary>
internal static class StatisticsText
{
    private static readonly string[] Heads = ["fired", "shown", "borderline", "unknown", "accepted", "overridden"];

    public static void Write(TextWriter to, RuleStatistics statistics)
    {
        var width = statistics.Months.Select(m => Name(m).Length).Append("all".Length).Max();
        to.WriteLine(statistics.Rule);
        to.WriteLine($"  {new string(' ', width)}{string.Concat(Heads.Select(h => $"  {h}"))}");
        foreach (var month in statistics.Months) WriteRow(to, width, Name(month), month.Counts);
        WriteRow(to, width, "all", statistics.Total);
        WriteWhy(to, "overridden because", statistics.Total.Overridden);
        WriteWhy(to, "unknown for want of", statistics.Total.UnknownFor);
    }

    private static void WriteRow(TextWriter to, int width, string name, RuleCounts counts)
    {
        long[] numbers =
            [counts.Fired, counts.Shown, counts.Borderline, counts.Unknown, counts.Accepted, counts.Overridden.Values.Sum()];
        var cells = numbers.Zip(Heads, (n, head) => "  " + n.ToString("N0", CultureInfo.InvariantCulture).PadLeft(head.Length));
        to.WriteLine($"  {name.PadRight(width)}{string.Concat(cells)}");
    }

    private static void WriteWhy(TextWriter to, string title, ImmutableSortedDictionary<string, long> counts)
    {
        if (counts.IsEmpty) return;
        to.WriteLine($"  {title}");
        foreach (var (why, count) in counts.OrderByDescending(c => c.Value))
            to.WriteLine($"    {why}  {count.ToString("N0", CultureInfo.InvariantCulture)}");
    }

    private static string Name(RuleMonth month) => $"{month.Month}  {month.Pack} {month.Version}";
}
