using System.Collections.Immutable;
using FindingRules.Model.Studies;
using FindingRules.Model.Text;

namespace FindingRules.Model.Packs;

/// <summary>A worked example: findings, and what must come out of them.</summary>
public sealed record Case(string Id, string About, Study Study, CaseExpectation Expect, Location DeclaredAt);

/// <summary>
/// What a case demands. Each list names what must be there; a list that is present but empty demands that there be
/// nothing of its sort; an absent one (default) demands nothing.
/// </summary>
public sealed record CaseExpectation
{
    /// <summary>Ids of rules that must be true of some subject and stand.</summary>
    public ImmutableArray<Expected> Fires { get; init; }

    /// <summary>Ids of rules that must be false of every subject in the study.</summary>
    public ImmutableArray<Expected> Silent { get; init; }

    /// <summary>Ids of rules that must be unknown, or be left open by something unknown, of some subject.</summary>
    public ImmutableArray<Expected> Unknown { get; init; }

    /// <summary>Ids of rules that must be true of some subject and yield there.</summary>
    public ImmutableArray<Expected> Yields { get; init; }

    /// <summary>
    /// Such as <c>right supraspinatus tear-depth full-thickness</c>; the whole list of answered topics that have wording.
    /// </summary>
    public ImmutableArray<Expected> Concludes { get; init; }

    /// <summary>Such as <c>right supraspinatus tear-depth</c>.</summary>
    public ImmutableArray<Expected> Held { get; init; }

    /// <summary>Such as <c>right supraspinatus tear-depth</c>.</summary>
    public ImmutableArray<Expected> Conflicts { get; init; }

    /// <summary>Open next steps: <c>ultrasound</c>, <c>evaluate right subscapularis</c>.</summary>
    public ImmutableArray<Expected> Next { get; init; }

    public ImmutableArray<Expected> Done { get; init; }

    public ImmutableArray<Expected> Cautions { get; init; }

    /// <summary>Ids of rules whose truth lies within the precision of a measurement.</summary>
    public ImmutableArray<Expected> Borderline { get; init; }

    /// <summary>Such as <c>right supraspinatus reangled</c>; each must be among what is asked next.</summary>
    public ImmutableArray<Expected> Asks { get; init; }

    /// <summary>Such as <c>study 23.3 %</c>; the whole list of probabilities stated.</summary>
    public ImmutableArray<Expected> Probabilities { get; init; }

    /// <summary>The impression text, line for line, the notice left out.</summary>
    public string? Impression { get; init; }
}

public sealed record Expected(string Text, Location Location);
