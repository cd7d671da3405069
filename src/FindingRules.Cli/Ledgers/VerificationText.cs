using System.Globalization;
using FindingRules.Ledger.Verifying;

namespace FindingRules.Cli.Ledgers;

/// <summary>What a verification showed, and what it cannot show.</summary>
internal static class VerificationText
{
    public static void Write(TextWriter to, string name, VerificationReport report, bool hasKey)
    {
        to.WriteLine($"Ledger {name}");
        to.WriteLine($"  {Count(report.Records, "record")}, root {report.Root}");
        if (report.Erased > 0)
            to.WriteLine(
                $"  {Count(report.Erased, "body", "bodies")} erased, and a record says so of each; the rest of those records is whole");
        WriteCover(to, report, hasKey);
        to.WriteLine();
        to.WriteLine(Verdict(report));
    }

    private static void WriteCover(TextWriter to, VerificationReport report, bool hasKey)
    {
        if (report.Head is not { } head)
        {
            to.WriteLine("""
                  No tree head was given. So this shows only that the store agrees with itself, which anybody who
                  can write it can bring about; and not that no records were cut off at its end.
                """);
            if (hasKey) to.WriteLine("  It names the public key that was given.");
            return;
        }
        var time = head.Time.UtcDateTime.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);
        if (report.IsSound && report.Covered == head.Size)
            to.WriteLine($"  the first {report.Covered:N0} are those that the tree head of {time} UTC was signed for, unchanged");
        else
            to.WriteLine($"  the tree head of {time} UTC was signed for {Count(head.Size, "record")}");
        var after = Math.Max(0, report.Records - head.Size);
        to.WriteLine($"  {Count(after, "record")} came after it. Of those the head shows nothing: not that they are unchanged,");
        to.WriteLine("  and not that no more of them were there and were cut off. A later head would.");
        if (report.ErasedAfterHead == 0) return;
        to.WriteLine(
            $"  {Count(report.ErasedAfterHead, "body", "bodies")} of covered records were erased by records after the head: nothing "
            + "vouches");
        to.WriteLine("  for those erasures, which anybody who can write the store could have added. A later head would.");
    }

    private static string Verdict(VerificationReport report)
    {
        if (!report.IsSound) return $"DOES NOT VERIFY: {Count(report.ProblemCount, "problem")}{Told(report)}.";
        return report.ErasedAfterHead == 0 ? "VERIFIED."
            : $"VERIFIED, but for the erasure of {Count(report.ErasedAfterHead, "body", "bodies")}, which nothing vouches for.";
    }

    private static string Told(VerificationReport report) =>
        report.ProblemCount > report.Problems.Length ? $", of which the first {report.Problems.Length} are told" : "";

    private static string Count(long number, string one, string? many = null) => string.Create(
        CultureInfo.InvariantCulture, $"{number:N0} {(number == 1 ? one : many ?? one + "s")}");
}
