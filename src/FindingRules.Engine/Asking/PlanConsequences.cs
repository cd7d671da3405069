using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Model.Packs;

namespace FindingRules.Engine.Asking;

/// <summary>What a reading may say of a structure besides its topics: steps and cautions, with the rules that give each.</summary>
internal sealed class PlanConsequences
{
    public PlanConsequences(PlanRules plan)
    {
        All =
        [
            .. plan.Rules.SelectMany((entry, i) => entry.Rule.Conclusions.Select(c => (Conclusion: c, Key: KeyOf(c), Rule: i)))
                .Where(c => c.Key is not null).GroupBy(c => c.Key!, ReferenceEqualityComparer.Instance)
                .Select(g => (g.First().Conclusion, WeightOf(g.First().Conclusion), g.Select(c => c.Rule).Distinct().ToArray())),
        ];
        var ofRule = All.SelectMany((c, number) => c.Rules.Select(rule => (Rule: rule, Number: number)))
            .ToLookup(p => p.Rule, p => p.Number);
        OfRule = [.. plan.Rules.Select((_, i) => ofRule[i].ToArray())];
    }

    public ImmutableArray<(Conclusion Conclusion, Weight Weight, int[] Rules)> All { get; }

    /// <summary>By position of the rule: where in <see cref="All"/> is what it gives.</summary>
    public ImmutableArray<int[]> OfRule { get; }

    private static object? KeyOf(Conclusion conclusion) => conclusion switch
    {
        NextStepConclusion next => next.Step,
        EvaluateConclusion evaluate => evaluate.Step,
        CautionConclusion caution => caution.Caution,
        _ => null,
    };

    private static Weight WeightOf(Conclusion conclusion) => conclusion switch
    {
        NextStepConclusion next => Weights.Of(next.Step.Urgency),
        EvaluateConclusion evaluate => Weights.Of(evaluate.Step.Urgency),
        _ => Weight.Caution,
    };
}

/// <summary>Sorts of consequences, the weightiest first.</summary>
internal enum Weight
{
    UrgentStep,
    StepSoon,
    RoutineStep,
    DefiniteImpression,
    ProbableImpression,
    PossibleImpression,
    Caution,
}

internal static class Weights
{
    public const int Count = (int)Weight.Caution + 1;

    public static Weight Of(Urgency urgency) => urgency switch
    {
        Urgency.Urgent => Weight.UrgentStep,
        Urgency.Soon => Weight.StepSoon,
        _ => Weight.RoutineStep,
    };

    public static Weight Of(Certainty certainty) => certainty switch
    {
        Certainty.Definite => Weight.DefiniteImpression,
        Certainty.Probable => Weight.ProbableImpression,
        _ => Weight.PossibleImpression,
    };

    public static string WordOf(Weight weight) => weight switch
    {
        Weight.UrgentStep => "urgent next step",
        Weight.StepSoon => "next step soon",
        Weight.RoutineStep => "routine next step",
        Weight.DefiniteImpression => "definite impression",
        Weight.ProbableImpression => "probable impression",
        Weight.PossibleImpression => "possible impression",
        _ => "caution",
    };
}
