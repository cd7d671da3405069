using System.Globalization;
using System.Text;

namespace FindingRules.Model.Messages.Rendering;

/// <summary>
/// Text that cannot steer a terminal: what an author or a sender wrote may hold escape sequences, or marks that turn the
/// direction of reading around.
/// </summary>
public static class Printable
{
    private const char Replacement = '\uFFFD';
    private const int ControlPictures = 0x2400;

    public static string Of(string text)
    {
        var wellFormed = WellFormed(text);
        if (!wellFormed.Any(IsUnsafe)) return wellFormed;
        var shown = new StringBuilder(text.Length);
        foreach (var c in wellFormed)
            shown.Append(c < ' ' ? (char)(ControlPictures + c) : IsUnsafe(c) ? Replacement : c);
        return shown.ToString();
    }

    /// <summary>The text with halves of surrogate pairs replaced: escapes in JSON can make such, and no writer takes them.</summary>
    public static string WellFormed(string text)
    {
        foreach (var rune in text.EnumerateRunes())
            if (rune == Rune.ReplacementChar)
                return string.Concat(text.EnumerateRunes().Select(r => r.ToString()));
        return text;
    }

    private static bool IsUnsafe(char c) =>
        char.IsControl(c) || c is '\u2028' or '\u2029' || (c > '~' && IsInvisibleFormat(c));

    // The joiners belong to words of some scripts and to pictures; everything else of the class is never needed here.
    private static bool IsInvisibleFormat(char c) =>
        CharUnicodeInfo.GetUnicodeCategory(c) == UnicodeCategory.Format && c is not ('\u200C' or '\u200D');
}
