using System.Globalization;
using System.Text;

namespace FindingRules.Ledger.Canonical;

/// <summary>A double as ECMAScript writes it, which RFC 8785 (section 3.2.2.3) prescribes: shortest digits that read
/// back the same.</summary>
internal static class EcmaNumber
{
    /// <exception cref="ArgumentException">Not a number, or infinite: JSON has neither.</exception>
    public static string Write(double value)
    {
        if (!double.IsFinite(value)) throw new ArgumentException("JSON has no such number.", nameof(value));
        if (value == 0) return "0";
        // "R" has the shortest digits that read back the same; only its layout differs from ECMAScript's.
        var shortest = Math.Abs(value).ToString("R", CultureInfo.InvariantCulture);
        var (digits, point) = ExactDecimal.Split(shortest, ExactDecimal.Exponent(shortest)!.Value);
        var text = Place(digits, point);
        return value < 0 ? "-" + text : text;
    }

    /// <summary>Source: ECMA-262, Number::toString.</summary>
    public static string Place(string digits, int point)
    {
        if (digits.Length <= point && point <= 21) return digits.PadRight(point, '0');
        if (point is > 0 and <= 21) return digits.Insert(point, ".");
        if (point is > -6 and <= 0) return $"0.{new string('0', -point)}{digits}";
        var text = new StringBuilder(digits);
        if (digits.Length > 1) text.Insert(1, '.');
        return text.Append('e').Append(point > 0 ? '+' : '-').Append(Math.Abs(point - 1)).ToString();
    }
}
