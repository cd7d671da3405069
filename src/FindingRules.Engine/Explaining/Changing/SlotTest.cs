using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Explaining.Changing;

/// <summary>What some rule asks of a finding; values that all tests take the same way are one cell.</summary>
internal abstract record SlotTest;

internal sealed record IsOneOf(ImmutableSortedSet<string> Values) : SlotTest;

internal sealed record IsPresent : SlotTest;

internal sealed record Reaches(ExtentRelation Relation, int From, int To) : SlotTest
{
    public bool Holds(ImmutableArray<Stretch> stretches) => Relation == ExtentRelation.Within
        ? !stretches.IsEmpty && stretches.All(s => From <= s.From && s.To <= To)
        : stretches.Any(s => s.From <= From && To <= s.To);
}

/// <summary>A comparison as a function of the one finding, whatever else it uses taken as it is now.</summary>
/// <param name="Edges">Where its truth may turn.</param>
/// <param name="IsExact">It turns nowhere else while the other findings it uses stay as they are.</param>
/// <param name="IsAlone">It uses no other finding.</param>
internal sealed record IsCompared(Func<Rational, Truth> Holds, ImmutableArray<Rational> Edges, bool IsExact, bool IsAlone) : SlotTest;

/// <summary>Whether it was assessed at all, or tried and not assessable.</summary>
internal sealed record IsKnown : SlotTest;
