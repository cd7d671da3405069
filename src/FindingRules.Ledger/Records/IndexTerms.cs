using System.Collections.Immutable;

namespace FindingRules.Ledger.Records;

/// <summary>What the sender says that a record is found and counted by. To the ledger these are words without a meaning.</summary>
public sealed record IndexTerms
{
    public static IndexTerms None { get; } = new();

    /// <summary>One entry for a rule, whatever number of subjects it was bound to.</summary>
    public ImmutableArray<RuleTerm> Rules { get; init; } = [];

    public ImmutableArray<TopicTerm> Topics { get; init; } = [];

    /// <summary>Such as <c>right supraspinatus</c>.</summary>
    public ImmutableArray<string> Subjects { get; init; } = [];

    /// <summary>The key of the study; later readings can say that they replace it.</summary>
    public string? Study { get; init; }

    /// <summary>The key of the study that this one replaces.</summary>
    public string? Supersedes { get; init; }
}

/// <summary>What became of a rule in a reading; of several subjects, several may be said.</summary>
[Flags]
public enum RuleOutcomes
{
    None = 0,

    /// <summary>Its condition was true.</summary>
    Fired = 1,

    /// <summary>Something that it concluded or asked for stood in the answer.</summary>
    Shown = 2,

    /// <summary>It could not be decided.</summary>
    Unknown = 4,

    /// <summary>Within the precision of a measurement it would have come out otherwise.</summary>
    Borderline = 8,
}

/// <param name="Missing">Findings for want of which the rule was unknown.</param>
public sealed record RuleTerm(string Rule, string Revision, RuleOutcomes Outcomes, ImmutableArray<string> Missing);

public sealed record TopicTerm(string Topic, string Value);
