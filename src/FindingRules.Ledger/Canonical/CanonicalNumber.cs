using System.Buffers.Text;
using System.Text;

namespace FindingRules.Ledger.Canonical;

/// <summary>Which numbers a canonical form may hold as numbers.</summary>
public enum NumberForm
{
    /// <summary>All, each as the double nearest to it: RFC 8785 to the letter.</summary>
    Doubles,

    /// <summary>
    /// Those that RFC 8785 writes with plain digits and without changing their decimal value; any other becomes a text with all its digits,
    /// for a quantity with an exponent is none.
    /// </summary>
    Exact,
}

/// <summary>A JSON number in its canonical form.</summary>
internal static class CanonicalNumber
{
    // Any decimal of so many digits comes back from a double as it was.
    private const int SafeDigits = 15;

    public static void Write(ReadOnlySpan<byte> json, NumberForm form, CanonicalBuffer to)
    {
        if (IsCanonical(json)) to.Raw(json);
        else to.Ascii(Convert(json, form));
    }

    private static string Convert(ReadOnlySpan<byte> json, NumberForm form)
    {
        var written = Encoding.ASCII.GetString(json);
        var isDouble = Utf8Parser.TryParse(json, out double value, out _) && double.IsFinite(value);
        if (!isDouble && form == NumberForm.Doubles)
            throw new System.Text.Json.JsonException($"The number {written} is too large for a double.");
        var rounded = isDouble ? EcmaNumber.Write(value) : null;
        if (form == NumberForm.Doubles) return rounded!;
        var exact = ExactDecimal.Write(written);
        return exact == rounded && !exact.Contains('e', StringComparison.Ordinal) ? rounded : $"\"{ExactDecimal.WritePlain(written)}\"";
    }

    /// <summary>Plain decimals as people write them are in their canonical form already; this sees most of them
    /// without reading them.</summary>
    private static bool IsCanonical(ReadOnlySpan<byte> json)
    {
        var digits = json[0] == '-' ? json[1..] : json;
        if (digits.Length > SafeDigits || digits.ContainsAnyExceptInRange((byte)'.', (byte)'9')) return false;
        var point = digits.IndexOf((byte)'.');
        if (point < 0) return digits[0] != '0' || json.Length == 1;
        if (digits[^1] == '0') return false;
        return digits[0] != '0' || digits[(point + 1)..].IndexOfAnyExcept((byte)'0') is >= 0 and <= 5;
    }
}
