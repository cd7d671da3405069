using System.Collections.Immutable;
using FindingRules.Model.Quantities;
using FindingRules.Model.Text;

namespace FindingRules.Model.Vocabularies;

/// <summary>One observed, typed property, declared once on a kind (or on the study) and inherited by the kinds like it.</summary>
public sealed class Finding(string name, FindingType type, Location declaredAt)
{
    public string Name { get; } = name;

    public FindingType Type { get; } = type;

    public Location DeclaredAt { get; } = declaredAt;

    /// <summary>What a person reads instead of the name; the name with spaces unless the pack says otherwise.</summary>
    public string Title { get; init; } = name.Replace('-', ' ');

    public string? About { get; init; }

    /// <summary>Declared <c>normal: none</c>: a normal structure has none of it, so any value but zero describes a change.</summary>
    public bool IsAbsentWhenNormal { get; init; }

    public override string ToString() => Name;
}

/// <summary>What values a finding may have, and which one is normal.</summary>
public abstract record FindingType
{
    /// <summary>The word of the vocabulary file: choose, sign, measure, extent.</summary>
    public abstract string Word { get; }
}

/// <summary>One value of a closed list.</summary>
public sealed record ChoiceType(ImmutableArray<string> Values, string? Normal) : FindingType
{
    public override string Word => "choose";
}

/// <summary>Present or absent. <paramref name="NormallyPresent"/> is null where neither was declared normal.</summary>
public sealed record SignType(bool? NormallyPresent) : FindingType
{
    public override string Word => "sign";
}

/// <summary>A number with a unit. All intervals and the precision are in base units (see <see cref="Quantities.Unit"/>).</summary>
public sealed record MeasureType(Unit Unit, Interval Plausible, Rational Precision, Interval? Normal, bool IsWhole) : FindingType
{
    public override string Word => "measure";
}

/// <summary>How far something reaches along an axis, as a set of separate intervals of its points.</summary>
public sealed record ExtentType(Axis Axis, bool NormallyNone) : FindingType
{
    public override string Word => "extent";
}

/// <summary>An ordered list of named points, such as surface: bursal, intrasubstance, articular.</summary>
public sealed record Axis(string Name, ImmutableArray<string> Points, Location DeclaredAt)
{
    /// <summary>What a missing extent would settle is worked out over every set of points.</summary>
    public const int MostPoints = 10;

    public int IndexOf(string point) => Points.IndexOf(point);
}
