using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>Whether the study shows that a step was taken already.</summary>
internal static class DoneSteps
{
    public static bool IsDone(Examination examination, NextStep step) =>
        examination.Network.DoneSteps.TryGetValue(step, out var done) && done.Decide(examination, 0, isWidened: false) == Truth.True;

    /// <summary>Who tried and could not tell is not sent back to try again; what was found then says so.</summary>
    public static bool IsDone(Examination examination, EvaluateStep step, int index) =>
        Target(examination, step, index) is var target && step.CompletedBy.All(f => Sent(examination, target, f).Any());

    /// <summary>The structure to evaluate, on the side of the subject that it is said of.</summary>
    public static int Target(Examination examination, EvaluateStep step, int index)
    {
        var side = step.Structure.IsPaired ? examination[index].Subject.Side : Side.None;
        return examination.SiteOf(step.Structure, side == Side.None && step.Structure.IsPaired ? Side.Unknown : side);
    }

    public static IEnumerable<FindingValue> Sent(Examination examination, int whole, Finding finding)
    {
        for (var i = whole; i <= whole + examination[whole].LesionCount; i++)
            if (examination[i].Values[examination.Network.Slots[finding]] is { } value)
                yield return value;
    }
}
