using System.Collections.Immutable;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Compiling;

/// <summary>
/// Everything the pack has to say of one structure (or, with none, of the study): rules in order of id, topics in order
/// of name, and for each layer which of them come next.
/// </summary>
internal sealed class StructurePlan(Structure? structure, ImmutableArray<RuleEntry> rules, ImmutableArray<TopicEntry> topics, int slotCount)
{
    public Structure? Structure { get; } = structure;

    public ImmutableArray<RuleEntry> Rules { get; } = rules;

    public ImmutableArray<TopicEntry> Topics { get; } = topics;

    public int SlotCount { get; } = slotCount;

    public ImmutableArray<int> LayersUsed { get; } =
        [.. rules.Select(r => r.Layer).Concat(topics.Select(t => t.Layer)).Distinct().Order()];

    /// <summary>Position of a topic in <see cref="Topics"/> by its number in the network; -1 where it is not of this structure.</summary>
    public int IndexOfTopic(int number)
    {
        for (var i = 0; i < Topics.Length; i++)
            if (Topics[i].Number == number)
                return i;
        return -1;
    }
}

/// <param name="Superiors">Positions, in the same plan, of every rule that this one yields to, over several steps too.</param>
/// <param name="OwnSlots">Own findings it uses, where it uses nothing else; null where it must always be worked out.</param>
internal sealed record RuleEntry(
    Rule Rule, Node Condition, int Layer, ImmutableArray<int> Superiors, ImmutableArray<int>? OwnSlots);

/// <param name="Givers">Rules that conclude the topic: position in the plan and which value.</param>
/// <param name="Holders">Rules that hold it.</param>
internal sealed record TopicEntry(
    Topic Topic, int Number, int Layer, ImmutableArray<(int Rule, int Value)> Givers, ImmutableArray<int> Holders);
