using System.Globalization;

namespace FindingRules.Packs.Documents;

/// <summary>What stands behind a backslash in a double-quoted YAML scalar. Source: YAML 1.2.2, section 5.7.</summary>
internal static class Escapes
{
    /// <summary>How many characters of the file the escape takes.</summary>
    public static int Read(ReadOnlySpan<char> at, out string text)
    {
        text = "";
        if (at.Length < 2) return at.Length;
        var digits = at[1] switch { 'x' => 2, 'u' => 4, 'U' => 8, _ => 0 };
        if (digits == 0)
        {
            text = Single(at[1]).ToString();
            return 2;
        }
        if (at.Length < 2 + digits) return at.Length;
        if (int.TryParse(at.Slice(2, digits), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var code))
            text = code is > 0xFFFF and <= 0x10FFFF ? char.ConvertFromUtf32(code) : ((char)code).ToString();
        return 2 + digits;
    }

    private static char Single(char c) => c switch
    {
        '0' => '\0',
        'a' => '\a',
        'b' => '\b',
        't' or '\t' => '\t',
        'n' => '\n',
        'v' => '\v',
        'f' => '\f',
        'r' => '\r',
        'e' => '\u001b',
        'N' => '\u0085',
        '_' => '\u00a0',
        'L' => '\u2028',
        'P' => '\u2029',
        _ => c,
    };
}
