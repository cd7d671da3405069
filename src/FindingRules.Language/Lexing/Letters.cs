namespace FindingRules.Language.Lexing;

/// <summary>Which characters make words, numbers and gaps. ASCII only: letters of other scripts look alike.</summary>
internal static class Letters
{
    public static bool IsGap(char c) => c is ' ' or '\t' or '\n' or '\r';

    public static int SkipGaps(ReadOnlySpan<char> text, int at)
    {
        while (at < text.Length && IsGap(text[at])) at++;
        return at;
    }

    /// <summary>The end of a word such as <c>full-thickness</c>, or <paramref name="at"/> where none starts.</summary>
    public static int EndOfWord(ReadOnlySpan<char> text, int at)
    {
        if (at >= text.Length || !char.IsAsciiLetter(text[at])) return at;
        while (at < text.Length && IsInsideWord(text, at)) at++;
        return at;
    }

    public static int EndOfNumber(ReadOnlySpan<char> text, int at)
    {
        var start = at;
        at = EndOfDigits(text, at);
        if (at == start) return start;
        var fraction = at < text.Length && text[at] == '.' ? EndOfDigits(text, at + 1) : at;
        return fraction > at + 1 ? fraction : at;
    }

    /// <summary>The word goes on here; a hyphen belongs to it only between two of its letters or digits.</summary>
    public static bool IsInsideWord(ReadOnlySpan<char> text, int at) =>
        char.IsAsciiLetterOrDigit(text[at]) || (text[at] == '-' && at + 1 < text.Length && char.IsAsciiLetterOrDigit(text[at + 1]));

    private static int EndOfDigits(ReadOnlySpan<char> text, int at)
    {
        while (at < text.Length && char.IsAsciiDigit(text[at])) at++;
        return at;
    }
}
