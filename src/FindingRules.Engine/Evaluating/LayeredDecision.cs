using FindingRules.Engine.Compiling;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Evaluating;

/// <summary>
/// Decides rules and topics layer by layer: truth of every condition, who yields, conflicts, holds, publication. A rule
/// that the planes show to be false is not looked at.
/// </summary>
internal static class LayeredDecision
{
    public static void Run(Examination examination)
    {
        // Looking at structures that were not examined adds empty instances behind the present ones.
        var (present, candidates) = (examination.Count, 0);
        for (var i = 0; i < present; i++)
            if (examination[i] is { IsPresent: true } instance)
            {
                Select(examination, instance);
                candidates += instance.Candidates.Count;
            }
        examination.Work.Candidates += candidates;
        if (candidates == 0) return;
        for (var layer = 0; layer < examination.Network.LayerCount; layer++)
            for (var i = 0; i < present; i++)
                if (!examination[i].Candidates.IsAtEnd)
                    DecideRules(examination, i, layer);
    }

    private static void Select(Examination examination, Instance instance)
    {
        var own = instance.Plan.Own;
        // A structure with lesions is seen through them: each statement may be true of another one.
        if (instance.LesionCount == 0 && PlaneReader.TryLocate(examination, instance))
        {
            PlaneReader.Read(examination, instance, instance.Cells, instance.Settle(isWidened: false));
            return;
        }
        foreach (var position in own.InLayerOrder)
            if (instance.Takes(own.Rules[position].Rule.IsPerStructure))
                instance.Candidates.Ask(position);
    }

    private static void DecideRules(Examination examination, int index, int layer)
    {
        var instance = examination[index];
        var own = instance.Plan.Own;
        var steps = own.Steps.AsSpan();
        for (var candidates = instance.Candidates; !candidates.IsAtEnd; candidates.Advance())
        {
            ref readonly var candidate = ref candidates.Next;
            var position = candidate.Position;
            ref readonly var step = ref steps[position];
            if (step.Layer != layer) break;
            var truth = candidate.MustAsk ? Ask(examination, index, own.Rules[position], isWidened: false) : candidate.Truth;
            if (truth == Truth.False) continue;
            var standing = step.HasSuperiors ? StandingOf(instance, own.Rules[position], truth)
                : truth == Truth.True ? Standing.Stands
                : Standing.Unknown;
            instance.Write(position, truth, standing);
            if (standing == Standing.Yields) continue;
            foreach (ref readonly var answer in own.Answers[position]) instance.Mark(answer, standing);
        }
    }

    public static Truth Ask(Examination examination, int index, RuleEntry entry, bool isWidened) =>
        entry.OwnSlots is { } slots && !AnySent(examination[index], slots)
            ? Truth.Unknown
            : entry.Condition.Decide(examination, index, isWidened);

    private static bool AnySent(Instance instance, System.Collections.Immutable.ImmutableArray<int> slots)
    {
        // A structure with lesions is seen through them.
        if (instance.LesionCount > 0) return true;
        foreach (var slot in slots)
            if (instance.Values[slot] is not null)
                return true;
        return false;
    }

    /// <summary>How a rule stands that is not false, beside those that it yields to.</summary>
    public static Standing StandingOf(Instance instance, RuleEntry entry, Truth truth)
    {
        var highest = Truth.False;
        foreach (var superior in entry.Superiors) highest = Kleene.Or(highest, instance.TruthOf(superior));
        return (truth, highest) switch
        {
            (_, Truth.True) => Standing.Yields,
            (Truth.Unknown, _) => Standing.Unknown,
            (_, Truth.Unknown) => Standing.Open,
            _ => Standing.Stands,
        };
    }
}
