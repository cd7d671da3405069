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
        var present = examination.Count;
        for (var i = 0; i < present; i++)
            if (examination[i].IsPresent)
                Select(examination, examination[i]);
        for (var layer = 0; layer < examination.Network.LayerCount; layer++)
            for (var i = 0; i < present; i++)
                if (examination[i].IsPresent)
                    DecideRules(examination, i, layer);
    }

    private static void Select(Examination examination, Instance instance)
    {
        var own = instance.Plan.Own;
        var cells = examination.CellsFor(own.Planes);
        // A structure with lesions is seen through them: each statement may be true of another one.
        if (instance.LesionCount == 0 && PlaneReader.TryLocate(examination, instance, isWidened: false, cells))
        {
            PlaneReader.Read(examination, instance, cells);
            return;
        }
        foreach (var position in own.InLayerOrder)
            if (instance.Takes(own.Rules[position].Rule.IsPerStructure))
                instance.Candidates.Ask(position);
    }

    private static void DecideRules(Examination examination, int index, int layer)
    {
        var instance = examination[index];
        var rules = instance.Plan.Rules;
        for (var candidates = instance.Candidates; !candidates.IsAtEnd; candidates.Advance())
        {
            ref readonly var candidate = ref candidates.Next;
            var entry = rules[candidate.Position];
            if (entry.Layer != layer) break;
            examination.Work.Candidates++;
            var truth = candidate.MustAsk ? Ask(examination, index, entry, isWidened: false) : candidate.Truth;
            if (truth == Truth.False) continue;
            var standing = StandingOf(instance, entry, truth);
            instance.Write(candidate.Position, truth, standing);
            if (standing == Standing.Yields) continue;
            foreach (var answer in instance.Plan.Own.Answers[candidate.Position]) instance.Mark(answer, standing);
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
