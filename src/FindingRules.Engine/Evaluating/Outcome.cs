using System.Collections.Immutable;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Evaluating;

/// <summary>
/// What became of every rule and topic of every subject present, before it is put into words. The network and the
/// reference interpreter agree on this, part for part.
/// </summary>
/// <param name="Rules">By subject, then rule id. Withdrawn rules are not among them.</param>
/// <param name="Topics">By subject, then topic name.</param>
public sealed record Outcome(ImmutableArray<RuleOutcome> Rules, ImmutableArray<TopicOutcome> Topics);

/// <param name="Truth">Of the condition.</param>
/// <param name="Widened">Of the condition with every measure widened by its precision.</param>
public sealed record RuleOutcome(Rule Rule, Subject Subject, Truth Truth, Truth Widened, Standing Standing);

public enum Standing : byte
{
    /// <summary>The condition is false.</summary>
    False,

    /// <summary>The condition is unknown and no superior is true.</summary>
    Unknown,

    /// <summary>True or unknown, and a superior is true.</summary>
    Yields,

    /// <summary>True, no superior is true, but one is unknown.</summary>
    Open,

    /// <summary>True, and every superior is false.</summary>
    Stands,
}

/// <param name="Value">Of a published topic.</param>
public sealed record TopicOutcome(Topic Topic, Subject Subject, TopicStatus Status, string? Value);

public enum TopicStatus
{
    /// <summary>No rule can still answer it.</summary>
    None,

    Published,

    /// <summary>Two standing rules give two values.</summary>
    Conflict,

    /// <summary>A standing rule holds it.</summary>
    Held,

    /// <summary>Something unknown could answer it, change it or withhold it.</summary>
    Open,
}
