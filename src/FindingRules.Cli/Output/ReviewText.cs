using FindingRules.Model.Messages.Rendering;

namespace FindingRules.Cli.Output;

/// <summary>The outcome of a review in a few lines, below its messages.</summary>
internal static class ReviewText
{
    private const int DigestDigits = 12;
    private const int FewFailed = 20;

    public static void Write(TextWriter to, string folder, PackReview review)
    {
        if (review.Pack is not { } pack)
        {
            to.WriteLine($"{folder} could not be read: {MessageText.Count(review.Messages)}. No case was run.");
            return;
        }
        to.WriteLine(
            $"Pack {pack.Pack.Name} {pack.Pack.Version}, digest {pack.Pack.MeaningDigest[..DigestDigits]}"
            + (pack.Pack.Approval is null ? ", DEMONSTRATION" : ""));
        WriteCounts(to, pack, review);
        foreach (var failed in review.Cases.Where(c => !c.Passed).Take(FewFailed))
            to.WriteLine($"  failed: {failed.Case.Id}  {failed.Case.About}");
        var count = MessageText.Count(review.Messages);
        to.WriteLine(count.Length == 0 ? "Nothing to mend." : $"{count}.");
    }

    private static void WriteCounts(TextWriter to, CompiledPack pack, PackReview review)
    {
        var inForce = pack.Pack.Rules.Count(pack.Pack.IsInForce);
        var withdrawn = pack.Pack.Rules.Length - inForce;
        var failed = review.Cases.Count(c => !c.Passed);
        to.WriteLine(
            $"{Number(inForce, "rule")} in force{(withdrawn > 0 ? $", {withdrawn} withdrawn" : "")}; "
            + $"{Number(review.Cases.Length, "case")}: {review.Cases.Length - failed} passed, {failed} failed; "
            + $"{Number(review.Unexercised.Length, "rule")} without a case.");
    }

    private static string Number(int count, string word) => $"{count} {word}{(count == 1 ? "" : "s")}";
}
