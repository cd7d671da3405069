namespace FindingRules.Model.Quantities;

/// <summary>
/// Reads a quantity as a study writes it: <c>14 mm</c>, <c>&lt;2 mm</c>, <c>&gt;= 5 cm</c>, <c>2 mm to 3 mm</c>. By hand
/// and without allocation of its own, because every measure of every study passes through here.
/// </summary>
public ref struct QuantityText
{
    private readonly Unit? _unitUnsaid;
    private ReadOnlySpan<char> _rest;

    private QuantityText(ReadOnlySpan<char> text, Unit? unitUnsaid)
    {
        _rest = text;
        _unitUnsaid = unitUnsaid;
    }

    /// <summary>What was read, or what is wrong with the text and which part of it.</summary>
    /// <param name="unitUnsaid">The unit of a number without one; null where each number needs its unit.</param>
    public static QuantityReading Read(ReadOnlySpan<char> text, Unit? unitUnsaid = null)
    {
        var reader = new QuantityText(text, unitUnsaid);
        reader.SkipSpaces();
        var comparator = reader.ReadComparator();
        var first = reader.ReadOne();
        if (first.Problem != QuantityProblem.None || reader._rest.IsEmpty) return first with { Comparator = comparator };
        if (comparator != QuantityComparator.None || !reader.Take("to")) return Wrong(QuantityProblem.TrailingWords);
        var second = reader.ReadOne();
        if (second.Problem != QuantityProblem.None) return second;
        if (!reader._rest.IsEmpty) return Wrong(QuantityProblem.TrailingWords);
        if (first.Unit!.Dimension != second.Unit!.Dimension) return Wrong(QuantityProblem.MixedUnits);
        if (first.First.InBase > second.First.InBase) return Wrong(QuantityProblem.OutOfOrder);
        return first with { Upper = second.First };
    }

    /// <summary>A number with at most 28 digits, or which of two things is wrong with it.</summary>
    public static QuantityProblem ReadNumber(ReadOnlySpan<char> text, out Rational number)
    {
        if (Rational.TryRead(text, out number)) return QuantityProblem.None;
        var digits = 0;
        foreach (var c in text)
            if (char.IsAsciiDigit(c)) digits++;
            else if (c is not ('.' or '-')) return QuantityProblem.NotANumber;
        return digits > Rational.MostDigits ? QuantityProblem.TooManyDigits : QuantityProblem.NotANumber;
    }

    private QuantityReading ReadOne()
    {
        SkipSpaces();
        var length = 0;
        while (length < _rest.Length && (char.IsAsciiDigit(_rest[length]) || _rest[length] is '.' or '-' or ',')) length++;
        if (length == 0) return Wrong(QuantityProblem.NotANumber);
        var problem = ReadNumber(_rest[..length], out var number);
        if (problem != QuantityProblem.None) return Wrong(problem);
        _rest = _rest[length..];
        SkipSpaces();
        var unitLength = _rest.IndexOf(' ') is >= 0 and var space ? space : _rest.Length;
        if (unitLength == 0 || _rest is "to" || _rest.StartsWith("to "))
            return _unitUnsaid is null ? Wrong(QuantityProblem.NoUnit) : new QuantityReading { First = new Quantity(number, _unitUnsaid) };
        if (Unit.Find(_rest[..unitLength]) is not { } unit)
            return new QuantityReading { Problem = QuantityProblem.UnknownUnit, UnknownUnit = _rest[..unitLength].ToString() };
        _rest = _rest[unitLength..];
        SkipSpaces();
        return new QuantityReading { First = new Quantity(number, unit) };
    }

    private QuantityComparator ReadComparator()
    {
        if (Take("<=") || Take("≤")) return QuantityComparator.AtMost;
        if (Take(">=") || Take("≥")) return QuantityComparator.AtLeast;
        if (Take("<")) return QuantityComparator.Below;
        return Take(">") ? QuantityComparator.Above : QuantityComparator.None;
    }

    private bool Take(ReadOnlySpan<char> word)
    {
        if (!_rest.StartsWith(word)) return false;
        _rest = _rest[word.Length..];
        return true;
    }

    private void SkipSpaces() => _rest = _rest.TrimStart(' ');

    private static QuantityReading Wrong(QuantityProblem problem) => new() { Problem = problem };
}

/// <summary>One quantity, a bound, or a stretch from <see cref="First"/> to <see cref="Upper"/>.</summary>
public readonly record struct QuantityReading
{
    public QuantityProblem Problem { get; init; }

    public QuantityComparator Comparator { get; init; }

    public Quantity First { get; init; }

    public Quantity? Upper { get; init; }

    /// <summary>The word that stands where a unit does.</summary>
    public string? UnknownUnit { get; init; }

    public Unit? Unit => First.Unit;

    /// <summary>In base units.</summary>
    public Interval Interval
    {
        get
        {
            var value = First.InBase;
            if (Upper is { } upper) return Interval.Closed(value, upper.InBase);
            return Comparator switch
            {
                QuantityComparator.Below => new Interval(null, false, value, false),
                QuantityComparator.AtMost => new Interval(null, false, value, true),
                QuantityComparator.Above => new Interval(value, false, null, false),
                QuantityComparator.AtLeast => new Interval(value, true, null, false),
                _ => Interval.Point(value),
            };
        }
    }

    /// <summary>As a person reads it: 14 mm, less than 2 mm, 2 mm to 3 mm.</summary>
    public string Shown => Upper is { } upper ? $"{First} to {upper}" : Comparator switch
    {
        QuantityComparator.Below => $"less than {First}",
        QuantityComparator.AtMost => $"at most {First}",
        QuantityComparator.Above => $"more than {First}",
        QuantityComparator.AtLeast => $"at least {First}",
        _ => First.ToString(),
    };
}

public enum QuantityComparator
{
    None,
    Below,
    AtMost,
    Above,
    AtLeast,
}

public enum QuantityProblem
{
    None,
    NotANumber,
    TooManyDigits,
    NoUnit,
    UnknownUnit,
    TrailingWords,
    MixedUnits,
    OutOfOrder,
}
