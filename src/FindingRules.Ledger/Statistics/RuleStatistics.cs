using System.Collections.Immutable;

namespace FindingRules.Ledger.Statistics;

/// <summary>How a rule is doing. Each reading counts once; shadows do not count; what was erased stays counted.</summary>
public sealed record RuleStatistics(string Rule, RuleCounts Total, ImmutableArray<RuleMonth> Months);

/// <summary>The counts of one version of a pack in one month.</summary>
/// <param name="Month">Such as <c>2026-11</c>, of the reading, in UTC.</param>
public sealed record RuleMonth(string Pack, string Version, string Month, RuleCounts Counts);

/// <param name="Fired">Readings in which its condition was true.</param>
/// <param name="Shown">Readings in which something of it stood in the answer.</param>
/// <param name="Unknown">Readings in which it could not be decided.</param>
/// <param name="UnknownFor">Of those, for want of which finding; a reading may lack several.</param>
/// <param name="Borderline">Readings in which it would have come out otherwise within the precision of a measurement.</param>
/// <param name="Considered">Readings in which it fired or was borderline.</param>
/// <param name="Accepted">Suggestions of it that were accepted.</param>
/// <param name="Overridden">Suggestions of it that were overridden, by reason.</param>
public sealed record RuleCounts(
    long Fired, long Shown, long Unknown, ImmutableSortedDictionary<string, long> UnknownFor, long Borderline, long Considered,
    long Accepted, ImmutableSortedDictionary<string, long> Overridden)
{
    /// <summary>The part of the readings considered that was borderline; 0 where there are none.</summary>
    public double BorderlineShare => Considered == 0 ? 0 : (double)Borderline / Considered;
}
