using System.Collections.Immutable;
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
        step.Done is not null && examination.Network.DoneSteps[step].Decide(examination, 0, isWidened: false) == Truth.True;

    /// <summary>Who tried and could not tell is not sent back to try again; what was found then says so.</summary>
    public static bool IsDone(Examination examination, EvaluateStep step, int index)
    {
        // Two structures whose side nobody said need not be of one side.
        if (step.Structure.IsPaired && examination[index].Subject.Side is not (Side.Left or Side.Right)) return false;
        var target = Target(examination, step, index);
        foreach (var finding in step.CompletedBy)
            if (!IsSent(examination, target, finding))
                return false;
        return true;
    }

    /// <summary>The findings of the look that could not be judged at the structure or in any lesion of it.</summary>
    public static ImmutableArray<string> NotAssessable(Examination examination, int whole, EvaluateStep step)
    {
        var hidden = ImmutableArray.CreateBuilder<string>();
        foreach (var finding in step.CompletedBy)
            if (Sent(examination, whole, finding).All(static v => v is NotAssessableValue))
                hidden.Add(finding.Name);
        return hidden.DrainToImmutable();
    }

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

    private static bool IsSent(Examination examination, int whole, Finding finding)
    {
        var slot = examination.Network.Slots[finding];
        for (var i = whole; i <= whole + examination[whole].LesionCount; i++)
            if (examination[i].Values[slot] is not null)
                return true;
        return false;
    }
}
