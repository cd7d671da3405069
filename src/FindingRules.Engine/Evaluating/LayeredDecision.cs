using System.Numerics;
using FindingRules.Engine.Compiling;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Evaluating;

/// <summary>
/// Decides rules and topics layer by layer: truth of every condition, who yields, conflicts, holds, publication.
/// </summary>
internal static class LayeredDecision
{
    public static void Run(Examination examination)
    {
        // Looking at structures that were not examined adds empty instances behind the present ones.
        var present = examination.Count;
        for (var layer = 0; layer < examination.Network.LayerCount; layer++)
        {
            for (var i = 0; i < present; i++)
                if (examination[i].IsPresent)
                    DecideRules(examination, i, layer);
            for (var i = 0; i < present; i++)
                if (examination[i].IsPresent)
                    DecideTopics(examination[i], layer);
        }
    }

    private static void DecideRules(Examination examination, int index, int layer)
    {
        var instance = examination[index];
        var rules = instance.Plan.Rules;
        for (var i = 0; i < rules.Length; i++)
        {
            var entry = rules[i];
            if (entry.Layer != layer || !instance.Takes(entry.Rule.IsPerStructure)) continue;
            ref var state = ref instance.Rules[i];
            state.IsDecided = true;
            (state.Truth, state.Widened) = Decide(examination, index, entry);
            state.Standing = StandingOf(instance, entry, state.Truth);
        }
    }

    private static (Truth Exact, Truth Widened) Decide(Examination examination, int index, RuleEntry entry)
    {
        if (entry.OwnSlots is { } slots && !AnySent(examination[index], slots)) return (Truth.Unknown, Truth.Unknown);
        var exact = entry.Condition.Decide(examination, index, isWidened: false);
        var widened = entry.Condition.UsesPrecision ? entry.Condition.Decide(examination, index, isWidened: true) : exact;
        return (exact, widened);
    }

    private static bool AnySent(Instance instance, System.Collections.Immutable.ImmutableArray<int> slots)
    {
        // A structure with lesions is seen through them.
        if (instance.LesionCount > 0) return true;
        foreach (var slot in slots)
            if (instance.Values[slot] is not null)
                return true;
        return false;
    }

    private static Standing StandingOf(Instance instance, RuleEntry entry, Truth truth)
    {
        if (truth == Truth.False) return Standing.False;
        var highest = Truth.False;
        foreach (var superior in entry.Superiors)
            if (instance.Rules[superior].IsDecided)
                highest = Kleene.Or(highest, instance.Rules[superior].Truth);
        return (truth, highest) switch
        {
            (_, Truth.True) => Standing.Yields,
            (Truth.Unknown, _) => Standing.Unknown,
            (_, Truth.Unknown) => Standing.Open,
            _ => Standing.Stands,
        };
    }

    private static void DecideTopics(Instance instance, int layer)
    {
        var topics = instance.Plan.Topics;
        for (var i = 0; i < topics.Length; i++)
        {
            if (topics[i].Layer != layer || !instance.Takes(topics[i].Topic.IsPerStructure)) continue;
            instance.Topics[i] = StateOf(instance, topics[i]);
        }
    }

    private static TopicState StateOf(Instance instance, TopicEntry topic)
    {
        var (possible, sure) = (0UL, 0UL);
        foreach (var (rule, value) in topic.Givers)
        {
            var standing = instance.Rules[rule].Standing;
            if (standing is Standing.False or Standing.Yields) continue;
            possible |= 1UL << value;
            if (standing == Standing.Stands) sure |= 1UL << value;
        }
        var (isHeld, mayBeHeld) = (false, false);
        foreach (var holder in topic.Holders)
        {
            var standing = instance.Rules[holder].Standing;
            isHeld |= standing == Standing.Stands;
            mayBeHeld |= standing is Standing.Unknown or Standing.Open;
        }
        var status = BitOperations.PopCount(sure) > 1 ? TopicStatus.Conflict
            : isHeld ? TopicStatus.Held
            : mayBeHeld ? TopicStatus.Open
            : sure != 0 && possible == sure ? TopicStatus.Published
            : possible == 0 ? TopicStatus.None
            : TopicStatus.Open;
        return new TopicState
        {
            IsDecided = true,
            Status = status,
            Value = status == TopicStatus.Published ? BitOperations.TrailingZeroCount(sure) : -1,
            Possible = possible,
        };
    }
}
