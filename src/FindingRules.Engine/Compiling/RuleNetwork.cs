using System.Collections.Frozen;
using System.Collections.Immutable;
using FindingRules.Engine.Asking;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Compiling;

/// <summary>A compiled pack: immutable, shared by any number of evaluations at once.</summary>
public sealed class RuleNetwork
{
    private readonly FrozenDictionary<Structure, StructurePlan> _plans;

    internal RuleNetwork(
        Pack pack, FindingSlots slots, StructurePlan study, ImmutableArray<StructurePlan> plans,
        ImmutableDictionary<DerivedMeasure, AmountNode> derived,
        ImmutableDictionary<ProbabilityConclusion, AmountNode> before, ImmutableDictionary<NextStep, Node> doneSteps,
        int layerCount, int nodeCount)
    {
        Pack = pack;
        Slots = slots;
        StudyPlan = study;
        _plans = plans.ToFrozenDictionary(p => p.Structure!);
        Derived = derived;
        Before = before;
        DoneSteps = doneSteps;
        LayerCount = layerCount;
        NodeCount = nodeCount;
        Examinations = new ExaminationPool(this);
        Asking = new AskTables(pack);
        Words = new PackWords(slots);
    }

    public Pack Pack { get; }

    /// <summary>How many distinct conditions the rules come down to.</summary>
    public int NodeCount { get; }

    /// <summary>How many layers of rules rest on each other.</summary>
    public int LayerCount { get; }

    internal FindingSlots Slots { get; }

    internal StructurePlan StudyPlan { get; }

    /// <summary>The study's is one of them.</summary>
    internal int PlanCount => _plans.Count + 1;

    internal ImmutableDictionary<DerivedMeasure, AmountNode> Derived { get; }

    /// <summary>For each conclusion that states a probability: the probability before.</summary>
    internal ImmutableDictionary<ProbabilityConclusion, AmountNode> Before { get; }

    /// <summary>For each step that can be done already: the condition, on the study, that says so.</summary>
    internal ImmutableDictionary<NextStep, Node> DoneSteps { get; }

    /// <summary>Work space that is used again, so that a reading allocates no more than what it says.</summary>
    internal ExaminationPool Examinations { get; }

    /// <summary>What the pack asks of each finding.</summary>
    internal AskTables Asking { get; }

    /// <summary>What a report says whatever the study.</summary>
    internal PackWords Words { get; }

    internal StructurePlan PlanOf(Structure structure) => _plans[structure];

    /// <summary>Null for a structure that the vocabulary does not hold: a place that nobody can find.</summary>
    internal StructurePlan? PlanOfAny(Structure structure) => _plans.GetValueOrDefault(structure);
}
