using System.Globalization;

namespace FindingRules.Ledger.Canonical;

/// <summary>
/// A decimal number laid out as ECMAScript lays out numbers, but with all its digits: where a double holds the decimal
/// as it is, this is what <see cref="EcmaNumber"/> writes.
/// </summary>
internal static class ExactDecimal
{
    // Beyond a double's reach nobody writes all zeros, and no quantity is taken.
    private const int MostPlainZeros = 340;

    public static string Write(string number)
    {
        var isNegative = number[0] == '-';
        var unsigned = isNegative ? number[1..] : number;
        // An exponent beyond any number of this world is kept as it was sent.
        if (Exponent(unsigned) is not { } exponent) return number.ToLowerInvariant();
        var (digits, point) = Split(unsigned, exponent);
        if (digits.Length == 0) return "0";
        var text = EcmaNumber.Place(digits, point);
        return isNegative ? "-" + text : text;
    }

    /// <summary>The same without an exponent.</summary>
    public static string WritePlain(string number)
    {
        var isNegative = number[0] == '-';
        var unsigned = isNegative ? number[1..] : number;
        if (Exponent(unsigned) is not { } exponent || Math.Abs(exponent) > MostPlainZeros) return Write(number);
        var (digits, point) = Split(unsigned, exponent);
        if (digits.Length == 0) return "0";
        var text = point <= 0 ? $"0.{new string('0', -point)}{digits}"
            : digits.Length <= point ? digits.PadRight(point, '0')
            : digits.Insert(point, ".");
        return isNegative ? "-" + text : text;
    }

    /// <summary>Significant digits without leading or trailing zeros, and where the point stands counted from their start.</summary>
    public static (string Digits, int Point) Split(string unsigned, int exponent)
    {
        var e = unsigned.AsSpan().IndexOfAny('e', 'E');
        var mantissa = e < 0 ? unsigned : unsigned[..e];
        var dot = mantissa.IndexOf('.');
        var point = (dot < 0 ? mantissa.Length : dot) + exponent;
        var digits = mantissa.Replace(".", "", StringComparison.Ordinal);
        var leading = digits.Length - digits.TrimStart('0').Length;
        return (digits.Trim('0'), point - leading);
    }

    public static int? Exponent(string unsigned)
    {
        var e = unsigned.AsSpan().IndexOfAny('e', 'E');
        if (e < 0) return 0;
        return int.TryParse(unsigned.AsSpan(e + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var exponent)
            && Math.Abs((long)exponent) < 1_000_000_000 ? exponent : null;
    }
}
