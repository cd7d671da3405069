namespace FindingRules.Ledger.Correlation;

/// <summary>The value of <c>traceparent</c>. Source: W3C Trace Context, section 3.2.</summary>
internal static class TraceParentText
{
    private const int KnownLength = 55;

    public static (string TraceId, string ParentId, byte Flags)? Read(string text)
    {
        if (text.Length < KnownLength || text[2] != '-' || text[35] != '-' || text[52] != '-') return null;
        var (version, trace, parent, flags) = (text[..2], text[3..35], text[36..52], text[53..55]);
        if (!IsHex(version) || version == "ff" || !IsHex(flags) || !IsId(trace) || !IsId(parent)) return null;
        // A later version may say more, after another hyphen; this one says nothing more.
        if (version == "00" ? text.Length != KnownLength : text.Length > KnownLength && text[KnownLength] != '-') return null;
        var bits = Convert.FromHexString(flags)[0];
        return (trace, parent, version == "00" ? bits : (byte)(bits & 1));
    }

    private static bool IsId(string text) => IsHex(text) && text.AsSpan().ContainsAnyExcept('0');

    private static bool IsHex(string text) => text.All(char.IsAsciiHexDigitLower);
}
