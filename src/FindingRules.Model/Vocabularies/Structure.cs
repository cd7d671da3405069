using System.Collections.Immutable;
using FindingRules.Model.Text;

namespace FindingRules.Model.Vocabularies;

/// <summary>A class of structures that share the same findings.</summary>
public sealed class Kind(string name, Kind? like, ImmutableSortedDictionary<string, Finding> findings, Location declaredAt)
{
    public string Name { get; } = name;

    public Kind? Like { get; } = like;

    /// <summary>Every finding of the kind, the inherited ones included, by name.</summary>
    public ImmutableSortedDictionary<string, Finding> Findings { get; } = findings;

    public Location DeclaredAt { get; } = declaredAt;

    public bool IsA(Kind other) => this == other || (Like?.IsA(other) ?? false);

    public override string ToString() => Name;
}

/// <summary>Something with a name that is examined.</summary>
public sealed class Structure(string name, Kind kind, string title, string region, bool isPaired, Location declaredAt)
{
    public string Name { get; } = name;

    public Kind Kind { get; } = kind;

    public string Title { get; } = title;

    public string Region { get; } = region;

    /// <summary>One on each side; otherwise there is one only, and no side is said.</summary>
    public bool IsPaired { get; } = isPaired;

    public Location DeclaredAt { get; } = declaredAt;

    public override string ToString() => Name;
}

/// <summary>The side of a subject. Unknown: the structure is paired and the side was not sent.</summary>
public enum Side
{
    None,
    Left,
    Right,
    Unknown,
}

public static class Sides
{
    public static Side Other(this Side side) => side switch
    {
        Side.Left => Side.Right,
        Side.Right => Side.Left,
        _ => side,
    };

    public static string Word(this Side side) => side switch
    {
        Side.Left => "left",
        Side.Right => "right",
        Side.Unknown => "side-not-stated",
        _ => "midline",
    };
}
