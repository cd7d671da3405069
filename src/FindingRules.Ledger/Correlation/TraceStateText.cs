using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace FindingRules.Ledger.Correlation;

/// <summary>The values of <c>tracestate</c>, of which one mistake spoils all. Source: W3C Trace Context, section 3.3.</summary>
internal static partial class TraceStateText
{
    private const int MostEntries = 32;
    private const int MostCharacters = 512;
    private const string Key = @"[a-z][a-z0-9_\-*/]{0,255}|[a-z0-9][a-z0-9_\-*/]{0,240}@[a-z][a-z0-9_\-*/]{0,13}";
    private const string Value = @"[\x20-\x2b\x2d-\x3c\x3e-\x7e]{0,255}[\x21-\x2b\x2d-\x3c\x3e-\x7e]";

    public static ImmutableArray<string> Read(IReadOnlyList<string> headers)
    {
        var entries = headers.SelectMany(h => h.Split(',')).Select(e => e.Trim(' ', '\t')).Where(e => e.Length > 0).ToImmutableArray();
        var isRight = entries.Length <= MostEntries && entries.Sum(e => e.Length + 1) <= MostCharacters + 1
            && entries.All(e => Entry().IsMatch(e))
            && entries.Select(e => e[..e.IndexOf('=')]).Distinct(StringComparer.Ordinal).Count() == entries.Length;
        return isRight ? entries : [];
    }

    [GeneratedRegex($@"^(?:{Key})={Value}\z")]
    private static partial Regex Entry();
}
