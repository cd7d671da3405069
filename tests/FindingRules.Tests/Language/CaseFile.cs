using FindingRules.Model.Packs;
using FindingRules.Testing;

namespace FindingRules.Tests.Language;

/// <summary>
/// A file of cases: a line <c>scope :: text ⇒ result</c>, or a line <c>scope :: text</c> with what is said indented
/// below it. Before the scope may stand <c>crowded,</c> (a vocabulary of doubles) or <c>small,</c> (small limits).
/// </summary>
internal static class CaseFile
{
    private static readonly LoadLimits Small = new() { RuleCharacters = 60, RuleNesting = 2, RuleOperators = 4 };

    public static IEnumerable<string> Rows(string file) =>
        Blocks(file).Where(b => b.Count == 1).Select(b => b[0]);

    /// <summary>Each case with the lines below it, joined.</summary>
    public static IEnumerable<string> Whole(string file) => Blocks(file).Select(b => string.Join('\n', b));

    public static Case Read(string block)
    {
        var lines = block.Split('\n', 2);
        var (head, text) = Split(lines[0], " :: ");
        // With lines below it the text is the whole line: it may hold the mark itself.
        var (source, result) = lines.Length > 1 ? (text, lines[1]) : Split(text, " ⇒ ");
        var words = head.Split(", ");
        return new Case(
            words[^1], source.Replace("\\n", "\n", StringComparison.Ordinal), result,
            words[0] == "crowded" ? ExampleSymbols.Crowded : ExampleSymbols.Plain,
            words[0] == "small" ? Small : LoadLimits.Default);
    }

    private static (string Before, string Behind) Split(string text, string mark)
    {
        var at = text.IndexOf(mark, StringComparison.Ordinal);
        return at < 0 ? (text, "") : (text[..at], text[(at + mark.Length)..]);
    }

    private static List<List<string>> Blocks(string file)
    {
        var blocks = new List<List<string>>();
        foreach (var line in File.ReadAllLines(Repository.PathOf("tests", "cases", "language", file)))
        {
            if (line.Trim().Length == 0 || line.StartsWith('#')) continue;
            if (line.StartsWith(' ')) blocks[^1].Add(line);
            else blocks.Add([line]);
        }
        return blocks;
    }
}

internal sealed record Case(string Scope, string Text, string Result, Symbols Symbols, LoadLimits Limits);
