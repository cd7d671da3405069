using System.Collections.Frozen;

namespace FindingRules.Language.Lexing;

/// <summary>Characters that look like one of the language, or mean the same elsewhere, and what to write instead.</summary>
internal static class Lookalikes
{
    private const string Cyrillic = "аaеeоoрpсcуyхxіiјjѕsԁdһhкkмmтtвbнhАAВBЕEКKМMНHОOРPСCТTХX";
    private const string Greek = "αaοoρpνvιiκkτtυuχxγyεeΑAΒBΕEΖZΗHΙIΚKΜMΝNΟOΡPΤTΥYΧX";
    private const string Dashes = "\u2010-\u2011-\u2012-\u2013-\u2014-\u2212-\u00ad-_-";
    private const string Spaces = "\u00a0 \u2002 \u2003 \u2009 \u202f \u3000 \u200b \ufeff ";

    private static readonly FrozenDictionary<char, string> Single = Pairs(Cyrillic + Greek + Dashes + Spaces).Concat(
    [
        KeyValuePair.Create('×', "*"), KeyValuePair.Create('·', "*"), KeyValuePair.Create('÷', "/"), KeyValuePair.Create('−', "-"),
        KeyValuePair.Create('²', "2"), KeyValuePair.Create('°', " deg"), KeyValuePair.Create('⇒', "→"), KeyValuePair.Create('➔', "→"),
        KeyValuePair.Create('⟶', "→"), KeyValuePair.Create('∧', "and"), KeyValuePair.Create('∨', "or"), KeyValuePair.Create('¬', "not"),
        KeyValuePair.Create('[', "("), KeyValuePair.Create(']', ")"), KeyValuePair.Create('{', "("), KeyValuePair.Create('}', ")"),
        KeyValuePair.Create('&', "and"), KeyValuePair.Create('|', "or"), KeyValuePair.Create('!', "not"),
    ]).DistinctBy(p => p.Key).ToFrozenDictionary();

    private static readonly (string Written, string Instead)[] Pairings =
        [("==", "="), ("=>", "→"), ("=<", "<="), ("<>", "is not"), ("!=", "is not"), ("&&", "and"), ("||", "or")];

    public static string? Instead(char c) =>
        c is >= '\uff01' and <= '\uff5e' ? ((char)(c - 0xfee0)).ToString() : Single.GetValueOrDefault(c);

    /// <summary>A mark of two characters that other languages have and this one has not.</summary>
    public static (string Written, string Instead)? Pairing(ReadOnlySpan<char> text)
    {
        foreach (var pairing in Pairings)
            if (text.StartsWith(pairing.Written, StringComparison.Ordinal))
                return pairing.Written == "=>" && text[2..].TrimStart() is [>= '0' and <= '9', ..] ? ("=>", ">=") : pairing;
        return null;
    }

    private static IEnumerable<KeyValuePair<char, string>> Pairs(string pairs)
    {
        for (var i = 0; i + 1 < pairs.Length; i += 2) yield return KeyValuePair.Create(pairs[i], pairs[i + 1].ToString());
    }
}
