using System.Globalization;
using System.Numerics;

namespace FindingRules.Model.Quantities;

/// <summary>An exact fraction, always in lowest terms with a positive denominator. No rounding happens in here.</summary>
public readonly struct Rational : IEquatable<Rational>, IComparable<Rational>
{
    /// <summary>Most digits a number may have where it is read or shown.</summary>
    public const int MostDigits = 28;

    private readonly BigInteger _denominatorLessOne; // so that default(Rational) is 0/1

    public Rational(BigInteger numerator, BigInteger denominator)
    {
        if (denominator.IsZero) throw new DivideByZeroException();
        if (denominator.Sign < 0) (numerator, denominator) = (-numerator, -denominator);
        var common = BigInteger.GreatestCommonDivisor(numerator, denominator);
        if (!common.IsOne) (numerator, denominator) = (numerator / common, denominator / common);
        Numerator = numerator;
        _denominatorLessOne = denominator - 1;
    }

    public BigInteger Numerator { get; }

    public BigInteger Denominator => _denominatorLessOne + 1;

    public static Rational Zero => default;

    public static Rational One => new(1, 1);

    public bool IsZero => Numerator.IsZero;

    public int Sign => Numerator.Sign;

    public static implicit operator Rational(int value) => new(value, 1);

    public static Rational operator +(Rational a, Rational b) =>
        new((a.Numerator * b.Denominator) + (b.Numerator * a.Denominator), a.Denominator * b.Denominator);

    public static Rational operator -(Rational a, Rational b) => a + -b;

    public static Rational operator -(Rational a) => new(-a.Numerator, a.Denominator);

    public static Rational operator *(Rational a, Rational b) => new(a.Numerator * b.Numerator, a.Denominator * b.Denominator);

    public static Rational operator /(Rational a, Rational b) => new(a.Numerator * b.Denominator, a.Denominator * b.Numerator);

    public static bool operator ==(Rational a, Rational b) => a.Equals(b);

    public static bool operator !=(Rational a, Rational b) => !a.Equals(b);

    public static bool operator <(Rational a, Rational b) => a.CompareTo(b) < 0;

    public static bool operator >(Rational a, Rational b) => a.CompareTo(b) > 0;

    public static bool operator <=(Rational a, Rational b) => a.CompareTo(b) <= 0;

    public static bool operator >=(Rational a, Rational b) => a.CompareTo(b) >= 0;

    public static Rational Abs(Rational a) => a.Sign < 0 ? -a : a;

    public static Rational Min(Rational a, Rational b) => a <= b ? a : b;

    public static Rational Max(Rational a, Rational b) => a >= b ? a : b;

    public int CompareTo(Rational other) => (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);

    public bool Equals(Rational other) => Numerator == other.Numerator && Denominator == other.Denominator;

    public override bool Equals(object? obj) => obj is Rational other && Equals(other);

    public override int GetHashCode() => HashCode.Combine(Numerator, Denominator);

    /// <summary>Reads a plain decimal such as <c>-4.60</c>: ASCII digits, at most <see cref="MostDigits"/>, no exponent.</summary>
    public static bool TryRead(ReadOnlySpan<char> text, out Rational value)
    {
        value = default;
        var digits = text.Length > 0 && text[0] == '-' ? text[1..] : text;
        var point = digits.IndexOf('.');
        var fraction = point < 0 ? 0 : digits.Length - point - 1;
        var count = digits.Length - (point < 0 ? 0 : 1);
        if (count is 0 or > MostDigits || point == 0 || (point > 0 && fraction == 0)) return false;
        if (point >= 0 && digits[(point + 1)..].Contains('.')) return false;
        BigInteger number = 0;
        foreach (var c in digits)
        {
            if (c == '.') continue;
            if (!char.IsAsciiDigit(c)) return false;
            number = (number * 10) + (c - '0');
        }
        value = new Rational(text[0] == '-' ? -number : number, BigInteger.Pow(10, fraction));
        return true;
    }

    /// <summary>
    /// The decimal text without trailing zeros, exact where it ends within <see cref="MostDigits"/> digits. Otherwise
    /// rounded half to even to <paramref name="places"/> places, and <paramref name="isExact"/> is false.
    /// </summary>
    public string ToDecimalText(out bool isExact, int places = 4)
    {
        var rest = Denominator;
        var (twos, fives) = (0, 0);
        while (rest.IsEven) { rest /= 2; twos++; }
        while (rest % 5 == 0) { rest /= 5; fives++; }
        var needed = Math.Max(twos, fives);
        isExact = rest.IsOne && needed <= MostDigits;
        var shown = isExact ? needed : places;
        var scaled = RoundHalfEven(Numerator * BigInteger.Pow(10, shown), Denominator);
        var text = BigInteger.Abs(scaled).ToString(CultureInfo.InvariantCulture).PadLeft(shown + 1, '0');
        if (shown > 0) text = $"{text[..^shown]}.{text[^shown..]}".TrimEnd('0').TrimEnd('.');
        return scaled.Sign < 0 ? "-" + text : text;
    }

    /// <summary>Rounded half to even to so many decimal places. For showing only: nothing is worked out from it.</summary>
    public Rational Rounded(int places)
    {
        var scale = BigInteger.Pow(10, places);
        return new Rational(RoundHalfEven(Numerator * scale, Denominator), scale);
    }

    public override string ToString() => ToDecimalText(out var isExact) is var text && isExact ? text : $"{Numerator}/{Denominator}";

    private static BigInteger RoundHalfEven(BigInteger numerator, BigInteger denominator)
    {
        var quotient = BigInteger.DivRem(BigInteger.Abs(numerator), denominator, out var remainder);
        var twice = remainder * 2;
        if (twice > denominator || (twice == denominator && !quotient.IsEven)) quotient++;
        return numerator.Sign < 0 ? -quotient : quotient;
    }
}
