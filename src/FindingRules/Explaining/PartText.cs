using FindingRules.Model.Explanations;
using FindingRules.Model.Truths;

namespace FindingRules.Explaining;

/// <summary>A condition, part by part, with what was found for each.</summary>
/// <param name="explanation">Where the answers to topics are looked up.</param>
/// <param name="owner">The title of the rule's own subject, which need not be said again.</param>
internal sealed class PartText(Outline page, Explanation explanation, string owner)
{
    private const string Assessed = " assessed";

    public void Write(ProofPart part, int depth)
    {
        switch (part.Sort)
        {
            case "all" or "any":
                page.Line(depth, $"{Mark(part.Truth)} {(part.Sort == "all" ? "all of these are needed:" : "one of these is enough:")}");
                foreach (var inner in part.Parts) Write(inner, depth + 1);
                break;
            case "not" when part.Parts[0] is { Sort: "statement" } only:
                page.Line(depth, $"{Mark(part.Truth)} {Opposite(only.Words)}");
                Looks(only, depth + 1);
                break;
            case "not":
                page.Line(depth, $"{Mark(part.Truth)} the opposite of this:");
                Write(part.Parts[0], depth + 1);
                break;
            case "count":
                page.Line(depth, $"{Mark(part.Truth)} {part.Words}:");
                // Where enough were found, of the others no more than their names is needed.
                foreach (var inner in part.Parts) Counted(inner, part.Truth == Truth.True && inner.Truth != Truth.True, depth + 1);
                break;
            default:
                page.Line(depth, $"{Mark(part.Truth)} {part.Words}");
                Looks(part, depth + 1);
                break;
        }
    }

    /// <summary>As an author would write it.</summary>
    private static string Opposite(string words) => words.EndsWith(Assessed, StringComparison.Ordinal)
        ? $"{words[..^Assessed.Length]} not{Assessed}"
        : words.Contains(' ') ? $"not ({words})" : $"no {words}";

    private void Looks(ProofPart part, int depth)
    {
        foreach (var look in part.Looks) page.Line(depth, new LookText(explanation, owner).Of(look));
    }

    /// <summary>Structures of which nothing is known are told in one line, or a shoulder half examined fills the page.</summary>
    private void Counted(ProofPart counted, bool isAside, int depth)
    {
        var isBare = counted.Truth == Truth.Unknown && !HasSent(counted);
        page.Line(depth, $"{Mark(counted.Truth)} {counted.Subject}{(isBare ? ", of which nothing needed for it was sent" : "")}");
        if (isBare || isAside) return;
        new PartText(page, explanation, counted.Subject ?? owner).Write(counted with { Subject = null }, depth + 1);
    }

    private static bool HasSent(ProofPart part) =>
        part.Parts.Any(HasSent) || part.Looks.Any(l => l.Answer is not null || l.Values.Any(v => v.Value is not null));

    public static string Mark(Truth truth) => truth switch
    {
        Truth.True => "yes:",
        Truth.False => "no:",
        _ => "not known:",
    };
}
