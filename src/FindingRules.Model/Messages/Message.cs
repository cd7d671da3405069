using System.Collections.Immutable;
using FindingRules.Model.Text;

namespace FindingRules.Model.Messages;

public enum Severity
{
    Note,
    Doubt,
    Error,
}

/// <summary>
/// One thing to tell the author of a pack or the sender of a study. Made by the catalogue only, so that each code has
/// one wording and one page.
/// </summary>
public sealed record Message
{
    internal Message(int number, Severity severity, Location location, string text)
    {
        Number = number;
        Severity = severity;
        Location = location;
        Text = text;
    }

    public int Number { get; }

    /// <summary>Such as FR3001: never reused, never renumbered.</summary>
    public string Code => $"FR{Number:0000}";

    public Severity Severity { get; }

    public Location Location { get; }

    /// <summary>Lower case, no full stop, one sentence: what was found, then what was expected.</summary>
    public string Text { get; }

    /// <summary>A few words shown at the underline: what to do about it.</summary>
    public string? Label { get; init; }

    /// <summary>Other places that take part, such as where a name was first declared.</summary>
    public ImmutableArray<RelatedPlace> Related { get; init; } = [];

    /// <summary>One replacement that would mend it.</summary>
    public Fix? Fix { get; init; }
}

public sealed record RelatedPlace(Location Location, string Label);

/// <summary>Put <paramref name="Replacement"/> in place of the words at <paramref name="Location"/>.</summary>
public sealed record Fix(string Title, Location Location, string Replacement);
