using FindingRules.Engine.Compiling;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Evaluating;

/// <summary>
/// One thing that rules are bound to or look at: the study, a structure on a side, or one of its lesions; examined now,
/// earlier, or not at all.
/// </summary>
internal sealed class Instance(Subject subject, StructurePlan plan, bool isPresent)
{
    private byte[]? _exact;
    private byte[]? _widened;

    public Subject Subject { get; } = subject;

    public StructurePlan Plan { get; } = plan;

    /// <summary>Sent, or required by a protocol: rules are worked out for it.</summary>
    public bool IsPresent { get; } = isPresent;

    /// <summary>By slot; null where nothing is known.</summary>
    public FindingValue?[] Values { get; init; } = new FindingValue?[plan.SlotCount];

    /// <summary>By slot: the value was filled in because the subject was sent as normal.</summary>
    public bool[]? IsFilled { get; init; }

    /// <summary>Position of the structure that the lesion is in; its own where it is none.</summary>
    public int Whole { get; init; }

    /// <summary>The lesions follow their structure.</summary>
    public int LesionCount { get; init; }

    public bool IsLesion => Subject.Lesion is not null;

    public RuleState[] Rules { get; } = isPresent ? new RuleState[plan.Rules.Length] : [];

    public TopicState[] Topics { get; } = isPresent ? new TopicState[plan.Topics.Length] : [];

    public byte[] Memo(int size, bool isWidened) => isWidened ? _widened ??= new byte[size] : _exact ??= new byte[size];

    /// <summary>Rules answered per structure are bound to the structure, the others to each lesion of one that has any.</summary>
    public bool Takes(bool isPerStructure) => isPerStructure ? !IsLesion : LesionCount == 0;
}

internal struct RuleState
{
    public bool IsDecided;
    public Truth Truth;
    public Truth Widened;
    public Standing Standing;
}

/// <summary>What became of a topic. Values are positions in <see cref="Model.Packs.Topic.Values"/>.</summary>
internal struct TopicState
{
    public bool IsDecided;
    public TopicStatus Status;
    public int Value;

    /// <summary>A bit for each value that some rule may still give.</summary>
    public ulong Possible;

    public readonly Truth TruthOf(ulong mask)
    {
        if (!IsDecided) return Truth.Unknown;
        if (Status == TopicStatus.Published) return Kleene.Of((mask & (1UL << Value)) != 0);
        return (Possible & mask) == 0 ? Truth.False : Truth.Unknown;
    }
}
