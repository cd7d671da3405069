using System.Globalization;
using System.Text;

namespace FindingRules.Packs.Documents;

/// <summary>The author's words as a message may show them: short, on one line, nothing hidden in them.</summary>
internal static class Shown
{
    private const int Most = 60;

    public static string Briefly(string words)
    {
        if (words.Length <= Most && IsPlain(words)) return words;
        var shown = new StringBuilder();
        foreach (var rune in words.EnumerateRunes())
        {
            if (shown.Length >= Most) return shown.Append('…').ToString();
            if (rune.Value is '\n' or '\r' or '\t') shown.Append(' ');
            else if (IsHidden(rune) || rune.Value == '`') shown.Append(CultureInfo.InvariantCulture, $"U+{rune.Value:X4}");
            else shown.Append(rune.ToString());
        }
        return shown.ToString();
    }

    private static bool IsPlain(string words)
    {
        foreach (var c in words)
            if (c is < ' ' or > '~' or '`')
                return false;
        return true;
    }

    private static bool IsHidden(Rune rune) => Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control
        or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
        or UnicodeCategory.OtherNotAssigned;
}
