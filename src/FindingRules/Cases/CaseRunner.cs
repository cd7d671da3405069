using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;

namespace FindingRules.Cases;

/// <summary>Evaluates a case's study and compares what comes with what the case expects.</summary>
internal static class CaseRunner
{
    public static CaseResult Run(Case @case, CompiledPack pack)
    {
        var messages = new MessageBag();
        var outcome = pack.Decide(@case.Study, messages);
        var reading = outcome is null ? null : pack.Evaluate(@case.Study, messages);
        if (outcome is not null && reading is not null) messages.AddRange(CaseComparison.Of(@case, outcome, reading));
        var exercised = outcome is null ? [] : CaseComparison.TrueRules(outcome);
        return new CaseResult(@case, messages.Sorted(), exercised);
    }
}

/// <param name="Differences">Empty where the case came out as it says.</param>
/// <param name="Exercises">Ids of the rules whose condition is true of a subject of the case.</param>
public sealed record CaseResult(Case Case, ImmutableArray<Message> Differences, ImmutableSortedSet<string> Exercises)
{
    public bool Passed => Differences.IsEmpty;
}
