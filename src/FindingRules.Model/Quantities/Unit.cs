using System.Collections.Immutable;

namespace FindingRules.Model.Quantities;

/// <summary>
/// One of the closed list of units. <paramref name="Name"/> is the word in rules and studies, <paramref name="Ucum"/>
/// the code of the Unified Code for Units of Measure (ucum.org), which studies may use as well. The base units are
/// mm, s, deg, months and the plain number; <paramref name="InBase"/> base units make one of this unit.
/// </summary>
public sealed record Unit(string Name, string Ucum, Dimension Dimension, Rational InBase)
{
    public static readonly Unit Millimetre = new("mm", "mm", new(Length: 1), 1);
    public static readonly Unit Centimetre = new("cm", "cm", new(Length: 1), 10);
    public static readonly Unit SquareMillimetre = new("mm2", "mm2", new(Length: 2), 1);
    public static readonly Unit SquareCentimetre = new("cm2", "cm2", new(Length: 2), 100);
    public static readonly Unit CentimetrePerSecond = new("cm/s", "cm/s", new(Length: 1, Second: -1), 10);
    public static readonly Unit Degree = new("deg", "deg", new(Angle: 1), 1);
    public static readonly Unit Percent = new("%", "%", Dimension.None, new Rational(1, 100));
    public static readonly Unit Plain = new("1", "1", Dimension.None, 1);
    public static readonly Unit Year = new("years", "a", new(Month: 1), 12);
    public static readonly Unit Month = new("months", "mo", new(Month: 1), 1);

    public static readonly ImmutableArray<Unit> All =
    [
        Millimetre, Centimetre, SquareMillimetre, SquareCentimetre, CentimetrePerSecond, Degree, Percent, Plain, Year, Month,
    ];

    public static Unit? Find(ReadOnlySpan<char> nameOrCode)
    {
        foreach (var unit in All)
            if (nameOrCode.SequenceEqual(unit.Name) || nameOrCode.SequenceEqual(unit.Ucum))
                return unit;
        return null;
    }

    public override string ToString() => Name;
}
