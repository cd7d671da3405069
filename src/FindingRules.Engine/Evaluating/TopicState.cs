using System.Numerics;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Evaluating;

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

/// <summary>
/// What the rules that are neither false nor yield say of a topic. Complete once the topic's layer is decided, and
/// nobody asks before.
/// </summary>
internal struct TopicMarks
{
    private ulong _possible;
    private ulong _sure;
    private bool _isHeld;
    private bool _mayBeHeld;

    public readonly bool IsMarked => _possible != 0 || _isHeld || _mayBeHeld;

    /// <param name="value">No bit for a rule that holds the topic.</param>
    public void Add(ulong value, Standing standing)
    {
        var stands = standing == Standing.Stands;
        _possible |= value;
        if (stands) _sure |= value;
        if (value != 0) return;
        _isHeld |= stands;
        _mayBeHeld |= !stands;
    }

    public readonly TopicState State
    {
        get
        {
            var status = BitOperations.PopCount(_sure) > 1 ? TopicStatus.Conflict
                : _isHeld ? TopicStatus.Held
                : _mayBeHeld ? TopicStatus.Open
                : _sure != 0 && _possible == _sure ? TopicStatus.Published
                : _possible == 0 ? TopicStatus.None
                : TopicStatus.Open;
            return new TopicState
            {
                IsDecided = true,
                Status = status,
                Value = status == TopicStatus.Published ? BitOperations.TrailingZeroCount(_sure) : -1,
                Possible = _possible,
            };
        }
    }
}
