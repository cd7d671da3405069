using FindingRules.Model.Vocabularies;

namespace FindingRules.Model.Studies;

/// <summary>
/// What a rule is bound to: one structure on one side, one lesion of it where it has lesions, or the study
/// (<paramref name="Structure"/> null). Ordered by structure, side and lesion.
/// </summary>
public sealed record Subject(Structure? Structure, Side Side, string? Lesion) : IComparable<Subject>
{
    // Told once and asked for often. A copy is of another subject, so it makes its own.
    private string? _key;
    private string? _title;

    private Subject(Subject other) => (Structure, Side, Lesion) = (other.Structure, other.Side, other.Lesion);

    public static Subject Study { get; } = new(null, Side.None, null);

    /// <summary>
    /// As messages, cases and JSON name it: <c>right supraspinatus</c>, <c>right supraspinatus lesion L1</c>, <c>study</c>.
    /// </summary>
    public string Key => _key ??= Structure is null
        ? "study"
        : $"{(Side == Side.None ? "" : Side.Word() + " ")}{Structure.Name}{(Lesion is null ? "" : $" lesion {Lesion}")}";

    /// <summary>As an impression names it: right supraspinatus tendon.</summary>
    public string Title => _title ??= MakeTitle();

    /// <summary>The structure that the lesion is in, or itself.</summary>
    public Subject Whole => Lesion is null ? this : this with { Lesion = null };

    public int CompareTo(Subject? other)
    {
        if (other is null) return 1;
        var byStructure = string.CompareOrdinal(Structure?.Name, other.Structure?.Name);
        if (byStructure != 0) return byStructure;
        return Side != other.Side ? Side.CompareTo(other.Side) : string.CompareOrdinal(Lesion, other.Lesion);
    }

    public bool Equals(Subject? other) =>
        other is not null && Structure == other.Structure && Side == other.Side && Lesion == other.Lesion;

    public override int GetHashCode() => HashCode.Combine(Structure, Side, Lesion);

    public override string ToString() => Key;

    public static bool operator <(Subject left, Subject right) => left.CompareTo(right) < 0;

    public static bool operator >(Subject left, Subject right) => left.CompareTo(right) > 0;

    public static bool operator <=(Subject left, Subject right) => left.CompareTo(right) <= 0;

    public static bool operator >=(Subject left, Subject right) => left.CompareTo(right) >= 0;

    private string MakeTitle()
    {
        if (Structure is null) return "study";
        var lesion = Lesion is null ? "" : $" (lesion {Lesion})";
        return Side switch
        {
            Side.Left or Side.Right => $"{Side.Word()} {Structure.Title}{lesion}",
            Side.Unknown => $"{Structure.Title} (side not stated){lesion}",
            _ => Structure.Title + lesion,
        };
    }
}
