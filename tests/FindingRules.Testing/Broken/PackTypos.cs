using System.Text.RegularExpressions;

namespace FindingRules.Testing.Broken;

/// <summary>Two neighbouring letters changed over, where the word means something.</summary>
internal static partial class PackTypos
{
    public static IEnumerable<BrokenPack> InKeys() =>
        from file in BrokenPack.Texts
        from key in Key().Matches(file.Value)
        where Words.Contains(key.Value)
        select Misspell(file.Key, file.Value, key);

    public static IEnumerable<BrokenPack> InRules() =>
        from rule in RuleText().Matches(BrokenPack.Texts["rules.yaml"])
        from word in Word().Matches(rule.Groups[1].Value)
        select Misspell("rules.yaml", BrokenPack.Texts["rules.yaml"], word, rule.Groups[1].Index);

    public static IEnumerable<BrokenPack> InNames() =>
        from place in Places
        from found in Regex.Matches(BrokenPack.Texts[place.Path], place.Pattern)
        from word in Word().Matches(found.Groups[1].Value)
        select Misspell(place.Path, BrokenPack.Texts[place.Path], word, found.Groups[1].Index);

    // Where a file names something that another line declares, or a word of the files' own.
    private static readonly (string Path, string Pattern)[] Places =
    [
        ("rules.yaml", @"source: \[(.*)\]"), ("rules.yaml", @"for: (.*)"), ("rules.yaml", @"over: \[(.*)\]"),
        ("vocabulary.yaml", @"extent: (\w+)"), ("vocabulary.yaml", @"like: (\w+)"), ("vocabulary.yaml", @"kind: ([\w-]+)"),
        ("vocabulary.yaml", @"measure: (\w+)"), ("vocabulary.yaml", @"normal: ([a-z-]+)"), ("vocabulary.yaml", @"paired: (\w+)"),
        ("scales.yaml", @"(?:for|of|when): (.*)"), ("scales.yaml", @"- \w+: (\w+)"), ("scales.yaml", @"certainty: (\w+)"),
        ("scales.yaml", @"source: \[(.*)\]"), ("topics.yaml", @"for: (.*)"), ("topics.yaml", @"certainty: (\w+)"),
        ("topics.yaml", @"\{(?:, )?([a-z-]+)\}"), ("topics.yaml", @"per: (\w+)"), ("topics.yaml", @"answers: (\w+)"),
        ("measures.yaml", @"is: ([^,]*)"), ("measures.yaml", @"for: ([^,]*)"), ("cautions.yaml", @"source: \[(.*)\]"),
        ("cautions.yaml", @"\{: ([a-z-]+)\}"), ("next-steps.yaml", @"urgency: (\w+)"), ("next-steps.yaml", @"done: ([\w ]+)"),
        ("next-steps.yaml", @"completed-by: \[(.*)\]"), ("references.yaml", @"status: (\w+)"),
        ("protocols.yaml", @"- \w+: \[(.*)\]"), ("protocols.yaml", @"- (\w+): \["),
        ("cases.yaml", @"structure: (\w+)"), ("cases.yaml", @"side: (\w+)"), ("cases.yaml", @"(?:fires|yields|unknown): \[(.*)\]"),
        ("cases.yaml", @"findings: \{ (.*?) \}"), ("cases.yaml", @"facts: \{ (.*?) \}"), ("cases.yaml", @"(?:held|next): \[(.*)\]"),
        ("cases.yaml", @"        - (right .*)"), ("pack.yaml", @"approval: (\w+)"), ("pack.yaml", @"- \{ ([a-z-]+): .*entries"),
    ];

    // Keys that the files' own form asks for, and findings that a case sends: not names that are first declared there.
    private static readonly HashSet<string> Words =
    [
        "kinds", "axes", "structures", "findings", "choose", "normal", "measure", "plausible", "precision", "sign",
        "extent", "like", "kind", "title", "region", "paired", "whole", "about", "topics", "for", "values", "says", "certainty", "per",
        "answers", "code", "system", "value", "next-steps", "evaluate", "urgency", "done", "completed-by", "cautions", "source",
        "measures", "is", "unit", "scales", "of", "when", "bands", "choice", "rules", "id", "rule", "because", "over", "owner",
        "reviewed", "review-by", "protocols", "requires", "as-indicated", "calm", "references", "facts", "cites", "status", "read",
        "cases", "study", "subjects", "structure", "side", "expect", "fires", "yields", "concludes", "held", "next", "unknown",
        "pack", "version", "language", "department", "approval", "caution", "withdrawn", "on", "files", "entries",
    ];

    private static BrokenPack Misspell(string path, string text, Match word, int offset = 0)
    {
        var at = offset + word.Index;
        var line = text.AsSpan(0, at).Count('\n') + 1;
        return BrokenPack.Of($"line {line}, {word.Value} misspelt", path, text[..at] + Swapped(word.Value) + text[(at + word.Length)..]);
    }

    private static string Swapped(string word)
    {
        for (var i = word.Length - 2; i >= 0; i--)
            if (word[i] != word[i + 1] && char.IsLetter(word[i]) && char.IsLetter(word[i + 1]))
                return $"{word[..i]}{word[i + 1]}{word[i]}{word[(i + 2)..]}";
        return word + "x";
    }

    [GeneratedRegex(@"(?<=^[ -]*|[{,] )[a-z][a-z-]*(?=:(?: |$))", RegexOptions.Multiline)]
    private static partial Regex Key();

    [GeneratedRegex(@"^    rule: \|?((?:.|\n      )*)$", RegexOptions.Multiline)]
    private static partial Regex RuleText();

    [GeneratedRegex(@"[A-Za-z][A-Za-z0-9-]{2,}")]
    private static partial Regex Word();
}
