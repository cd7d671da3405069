using System.Globalization;
using System.Numerics;

namespace FindingRules.Model.Quantities;

/// <summary>An exact fraction, always in lowest terms with a positive denominator. No rounding happens in here.</summary>
/// <remarks>Almost every number of a study is small: those are kept in two machine words, the others in a <see cref="Wide"/>.</remarks>
public readonly struct Rational : IEquatable<Rational>, IComparable<Rational>
{
    /// <summary>Most digits a number may have where it is read or shown.</summary>
    public const int MostDigits = 28;

    // INVARIANT: below this, products fit into 128 bits and so do sums of two of them.
    private const long SmallLimit = 1L << 62;

    private readonly long _numerator;
    private readonly long _denominatorLessOne; // so that default(Rational) is 0/1
    private readonly Wide? _wide; // INVARIANT: only where numerator or denominator is not small

    public Rational(BigInteger numerator, BigInteger denominator)
    {
        if (denominator.IsZero) throw new DivideByZeroException();
        if (denominator.Sign < 0) (numerator, denominator) = (-numerator, -denominator);
        var common = BigInteger.GreatestCommonDivisor(numerator, denominator);
        if (!common.IsOne) (numerator, denominator) = (numerator / common, denominator / common);
        if (BigInteger.Abs(numerator) < SmallLimit && denominator < SmallLimit)
            (_numerator, _denominatorLessOne) = ((long)numerator, (long)denominator - 1);
        else _wide = new Wide(numerator, denominator);
    }

    // INVARIANT: in lowest terms already, and small.
    private Rational(long numerator, long denominator) => (_numerator, _denominatorLessOne) = (numerator, denominator - 1);

    public BigInteger Numerator => _wide?.Numerator ?? _numerator;

    public BigInteger Denominator => _wide?.Denominator ?? SmallDenominator;

    public static Rational Zero => default;

    public static Rational One => new(1L, 1L);

    public bool IsZero => _wide is null && _numerator == 0;

    public int Sign => _wide is null ? Math.Sign(_numerator) : _wide.Numerator.Sign;

    private long SmallDenominator => _denominatorLessOne + 1;

    public static implicit operator Rational(int value) => new((long)value, 1L);

    public static Rational operator +(Rational a, Rational b)
    {
        if (a._wide is not null || b._wide is not null)
            return new((a.Numerator * b.Denominator) + (b.Numerator * a.Denominator), a.Denominator * b.Denominator);
        var (x, y) = (a.SmallDenominator, b.SmallDenominator);
        return x == y
            ? Reduced((Int128)a._numerator + b._numerator, x)
            : Reduced(((Int128)a._numerator * y) + ((Int128)b._numerator * x), (Int128)x * y);
    }

    public static Rational operator -(Rational a, Rational b) => a + -b;

    public static Rational operator -(Rational a) =>
        a._wide is null ? new(-a._numerator, a.SmallDenominator) : new(-a.Numerator, a.Denominator);

    public static Rational operator *(Rational a, Rational b) => a._wide is null && b._wide is null
        ? Reduced((Int128)a._numerator * b._numerator, (Int128)a.SmallDenominator * b.SmallDenominator)
        : new(a.Numerator * b.Numerator, a.Denominator * b.Denominator);

    public static Rational operator /(Rational a, Rational b)
    {
        if (a._wide is not null || b._wide is not null) return new(a.Numerator * b.Denominator, a.Denominator * b.Numerator);
        if (b._numerator == 0) throw new DivideByZeroException();
        var (numerator, denominator) = ((Int128)a._numerator * b.SmallDenominator, (Int128)a.SmallDenominator * b._numerator);
        return denominator < 0 ? Reduced(-numerator, -denominator) : Reduced(numerator, denominator);
    }

    public static bool operator ==(Rational a, Rational b) => a.Equals(b);

    public static bool operator !=(Rational a, Rational b) => !a.Equals(b);

    public static bool operator <(Rational a, Rational b) => a.CompareTo(b) < 0;

    public static bool operator >(Rational a, Rational b) => a.CompareTo(b) > 0;

    public static bool operator <=(Rational a, Rational b) => a.CompareTo(b) <= 0;

    public static bool operator >=(Rational a, Rational b) => a.CompareTo(b) >= 0;

    public static Rational Abs(Rational a) => a.Sign < 0 ? -a : a;

    public static Rational Min(Rational a, Rational b) => a <= b ? a : b;

    public static Rational Max(Rational a, Rational b) => a >= b ? a : b;

    /// <summary>Rounded, each of three times by less than 2^-52 of its size: to find a place quickly, never to decide.</summary>
    public double ToDouble() => _wide is null ? _numerator / (double)SmallDenominator : (double)Numerator / (double)Denominator;

    public int CompareTo(Rational other)
    {
        if (_wide is not null || other._wide is not null)
            return (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);
        return _denominatorLessOne == other._denominatorLessOne
            ? _numerator.CompareTo(other._numerator)
            : ((Int128)_numerator * other.SmallDenominator).CompareTo((Int128)other._numerator * SmallDenominator);
    }

    public bool Equals(Rational other) =>
        _numerator == other._numerator && _denominatorLessOne == other._denominatorLessOne && Equals(_wide, other._wide);

    public override bool Equals(object? obj) => obj is Rational other && Equals(other);

    public override int GetHashCode() => HashCode.Combine(_numerator, _denominatorLessOne, _wide);

    /// <param name="denominator">Positive.</param>
    private static Rational Reduced(Int128 numerator, Int128 denominator)
    {
        if (denominator >= SmallLimit || numerator >= SmallLimit || numerator <= -SmallLimit)
            return new((BigInteger)numerator, (BigInteger)denominator);
        var (n, d) = ((long)numerator, (long)denominator);
        if (d == 1) return new(n, d);
        var (common, rest) = (Math.Abs(n), d);
        while (rest != 0) (common, rest) = (rest, common % rest);
        return new(n / common, d / common);
    }

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
        Int128 number = 0; // INVARIANT: it has room for 38 digits
        foreach (var c in digits)
        {
            if (c == '.') continue;
            if (!char.IsAsciiDigit(c)) return false;
            number = (number * 10) + (c - '0');
        }
        Int128 scale = 1;
        for (var i = 0; i < fraction; i++) scale *= 10;
        value = Reduced(text[0] == '-' ? -number : number, scale);
        return true;
    }

    /// <summary>
    /// The decimal text without trailing zeros, exact where it ends within <see cref="MostDigits"/> digits. Otherwise
    /// rounded half to even to <paramref name="places"/> places, and <paramref name="isExact"/> is false.
    /// </summary>
    public string ToDecimalText(out bool isExact, int places = 4)
    {
        if (_wide is null && _denominatorLessOne == 0)
        {
            isExact = true;
            return _numerator.ToString(CultureInfo.InvariantCulture);
        }
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

    private sealed record Wide(BigInteger Numerator, BigInteger Denominator);
}
