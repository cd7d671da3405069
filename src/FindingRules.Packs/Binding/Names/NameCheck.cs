using FindingRules.Language.Lexing;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Names;

/// <summary>Names, ids and the letters they may have.</summary>
internal static class NameCheck
{
    /// <summary>A name such as <c>tear-length</c>; false once a message says why it is none.</summary>
    public static bool IsName(ScalarNode word, MessageBag messages)
    {
        if (!HasPlainLetters(word, messages)) return false;
        var at = word.Inside;
        if (!FitsName(word.Value) || word.LooksOtherThanText) messages.Add(PackMessages.NotAName(at, Shown.Briefly(word.Value)));
        else if (ReservedWords.Contains(word.Value)) messages.Add(PackMessages.ReservedWord(at, word.Value));
        else return true;
        return false;
    }

    /// <summary>An id such as <c>CUFF-010</c>; false once a message says why it is none.</summary>
    public static bool IsId(ScalarNode word, string example, MessageBag messages)
    {
        if (!HasPlainLetters(word, messages)) return false;
        if (FitsId(word.Value)) return true;
        messages.Add(PackMessages.NotAnId(word.Inside, Shown.Briefly(word.Value), example));
        return false;
    }

    private static bool FitsName(string text) => text.Length > 0 && char.IsAsciiLetterLower(text[0]) && Fits(text, isUpper: false);

    private static bool FitsId(string text) => text.Length > 0 && char.IsAsciiLetterUpper(text[0]) && Fits(text, isUpper: true);

    private static bool Fits(string text, bool isUpper)
    {
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (c == '-' && i > 0 && text[i - 1] != '-' && i + 1 < text.Length) continue;
            if (!char.IsAsciiDigit(c) && !(isUpper ? char.IsAsciiLetterUpper(c) : char.IsAsciiLetterLower(c))) return false;
        }
        return true;
    }

    private static bool HasPlainLetters(ScalarNode word, MessageBag messages)
    {
        foreach (var rune in word.Value.EnumerateRunes())
            if (!rune.IsAscii)
            {
                messages.Add(PackMessages.LookAlike(
                    word.Inside, Shown.Briefly(word.Value), Shown.Briefly(rune.ToString()), $"U+{rune.Value:X4}"));
                return false;
            }
        return true;
    }
}
