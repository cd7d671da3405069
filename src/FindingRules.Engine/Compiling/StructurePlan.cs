using System.Collections.Immutable;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Compiling.Planes;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Compiling;

/// <summary>
/// Everything the pack has to say of one structure (or, with none, of the study). Structures that the same rules speak of
/// share all but their names.
/// </summary>
/// <param name="number">Position among the network's plans, in order of name; the study comes last.</param>
internal sealed class StructurePlan(Structure? structure, int number, PlanRules rules, ImmutableArray<PlanFinding> findings, int slotCount)
{
    private readonly Subject[] _subjects = [.. Enum.GetValues<Side>().Select(side => new Subject(structure, side, null))];

    public Structure? Structure { get; } = structure;

    public int Number { get; } = number;

    /// <summary>In order of id.</summary>
    public ImmutableArray<RuleEntry> Rules => Own.Rules;

    /// <summary>In order of name.</summary>
    public ImmutableArray<TopicEntry> Topics => Own.Topics;

    public PlanRules Own { get; } = rules;

    /// <summary>In order of name.</summary>
    public ImmutableArray<PlanFinding> Findings { get; } = findings;

    public int SlotCount { get; } = slotCount;

    public Subject SubjectOn(Side side) => _subjects[(int)side];

    /// <summary>Where in <see cref="Topics"/> the topic of a number is; negative where it does not speak of this structure.</summary>
    public int IndexOfTopic(int number)
    {
        var (low, high) = (0, Topics.Length - 1);
        while (low <= high)
        {
            var middle = (low + high) >>> 1;
            if (Topics[middle].Number == number) return middle;
            if (Topics[middle].Number < number) low = middle + 1;
            else high = middle - 1;
        }
        return -1;
    }
}

/// <param name="Normal">What stands for it where its structure was sent as normal.</param>
internal sealed record PlanFinding(Finding Finding, int Slot, FindingValue? Normal);

/// <param name="Rules">In order of id.</param>
/// <param name="Topics">In order of name, and so of number.</param>
/// <param name="InLayerOrder">Positions of the rules, those of the first layer first.</param>
/// <param name="Steps">By position of the rule: the little that deciding most rules takes, close together.</param>
/// <param name="Answers">By position of the rule: what it gives or holds.</param>
internal sealed record PlanRules(
    ImmutableArray<RuleEntry> Rules, ImmutableArray<TopicEntry> Topics, ImmutableArray<int> InLayerOrder,
    ImmutableArray<RuleStep> Steps, RuleAnswers Answers, RulePlanes Planes);

/// <param name="Superiors">Positions, in the same plan, of every rule that this one yields to, over several steps too.</param>
/// <param name="OwnSlots">Own findings it uses, where it uses nothing else; null where it must always be worked out.</param>
internal sealed record RuleEntry(
    Rule Rule, Node Condition, int Layer, ImmutableArray<int> Superiors, ImmutableArray<int>? OwnSlots);

/// <param name="Givers">Rules that conclude the topic: position in the plan and which value.</param>
/// <param name="Holders">Rules that hold it.</param>
internal sealed record TopicEntry(
    Topic Topic, int Number, int Layer, ImmutableArray<(int Rule, int Value)> Givers, ImmutableArray<int> Holders);

internal readonly record struct RuleStep(int Layer, bool HasSuperiors);

/// <summary>The answers of all rules of a plan, one rule after the other.</summary>
/// <param name="First">By position of the rule: where its answers begin; they end where those of the next begin.</param>
internal sealed record RuleAnswers(ImmutableArray<int> First, ImmutableArray<RuleAnswer> All)
{
    public ReadOnlySpan<RuleAnswer> this[int rule] => All.AsSpan()[First[rule]..First[rule + 1]];
}

/// <param name="Topic">Position in the plan.</param>
/// <param name="Value">A bit for the value given; none where the rule holds the topic.</param>
internal readonly record struct RuleAnswer(int Topic, ulong Value);
