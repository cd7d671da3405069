namespace FindingRules.Model.Quantities;

/// <summary>A number with the unit it was given in. Equal quantities are equal whatever their unit: 3 cm is 30 mm.</summary>
public readonly record struct Quantity(Rational Number, Unit Unit)
{
    /// <summary>The number in base units (see <see cref="Unit"/>).</summary>
    public Rational InBase => Number * Unit.InBase;

    public static Quantity FromBase(Rational inBase, Unit unit) => new(inBase / unit.InBase, unit);

    public bool Equals(Quantity other) => Unit.Dimension == other.Unit.Dimension && InBase == other.InBase;

    public override int GetHashCode() => InBase.GetHashCode();

    /// <summary>Such as <c>14 mm</c>, <c>55 %</c> or <c>1.4</c>; "about" is put before what had to be rounded.</summary>
    public override string ToString()
    {
        var number = Number.ToDecimalText(out var isExact, places: 2);
        var text = Unit == Unit.Plain ? number : $"{number} {Unit.Name}";
        return isExact ? text : $"about {text}";
    }
}
