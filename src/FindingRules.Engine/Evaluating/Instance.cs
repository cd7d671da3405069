using FindingRules.Engine.Compiling;
using FindingRules.Engine.Compiling.Planes;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Evaluating;

/// <summary>
/// One thing that rules are bound to or look at: the study, a structure on a side, or one of its lesions; examined now,
/// earlier, or not at all. Its room is used again for the next study.
/// </summary>
internal sealed class Instance
{
    private FindingValue?[] _values = [];
    private Cells[] _cells = [];
    private bool[] _filled = [];
    private RuleState[] _states = [];
    private int[] _written = [];
    private TopicMarks[] _marks = [];
    private int[] _marked = [];
    private RuleState[]? _rules;
    private TopicState[]? _topics;
    private Subject? _subject;
    private readonly SettledBits _widened = new();
    private readonly CandidateList _room = new();
    private int _liveCount;
    private int _markedCount;
    private bool _isOwing;

    public Subject Subject => _subject ??= Lesion is null ? Plan.SubjectOn(Side) : new Subject(Plan.Structure, Side, Lesion);

    public StructurePlan Plan { get; private set; } = null!;

    public Structure? Structure => Plan.Structure;

    public Side Side { get; private set; }

    public string? Lesion { get; private set; }

    /// <summary>Sent, or required by a protocol: rules are worked out for it.</summary>
    public bool IsPresent { get; private set; }

    /// <summary>By slot; null where nothing is known. The room may be longer than the plan has slots.</summary>
    public FindingValue?[] Values => _values;

    /// <summary>By test of the plan: where the value lies.</summary>
    public Span<Cells> Cells => _cells.AsSpan(0, Plan.Own.Planes.Tests.Length);

    /// <summary>The cells of the direct tests are those of the values.</summary>
    public bool IsLocated { get; set; }

    /// <summary>By slot: the value was filled in because the subject was sent as normal.</summary>
    public bool[]? IsFilled { get; private set; }

    /// <summary>Position of the structure that the lesion is in; its own where it is none.</summary>
    public int Whole { get; set; }

    /// <summary>The lesions follow their structure.</summary>
    public int LesionCount { get; set; }

    public bool IsLesion => Lesion is not null;

    /// <summary>Rules that the planes do not settle and that may be other than false, in order of layer.</summary>
    public CandidateList Candidates { get; } = new();

    /// <summary>Rules that the planes settle; see <see cref="Settle"/>.</summary>
    public SettledBits Settled { get; } = new();

    /// <summary>Positions of the rules that are not false, or would not be with the measures widened.</summary>
    public ReadOnlySpan<int> Live => Known._written.AsSpan(0, _liveCount);

    public int LiveCount => Known._liveCount;

    /// <summary>Positions of the topics that some rule may answer or hold.</summary>
    public ReadOnlySpan<int> Marked => Known._marked.AsSpan(0, _markedCount);

    /// <summary>This, with what was settled written down.</summary>
    private Instance Known
    {
        get
        {
            if (_isOwing) WriteDown();
            return this;
        }
    }

    /// <summary>Every rule of the plan by position; made when it is first asked for, after everything was decided.</summary>
    public RuleState[] Rules => _rules ??= AllRules();

    /// <summary>Every topic of the plan by position; made when it is first asked for, after everything was decided.</summary>
    public TopicState[] Topics => _topics ??= AllTopics();

    public void Use(StructurePlan plan, Side side, string? lesion, bool isPresent)
    {
        (Plan, Side, Lesion, IsPresent) = (plan, side, lesion, isPresent);
        (_subject, _rules, _topics, IsFilled, Whole, LesionCount, IsLocated) = (null, null, null, null, 0, 0, false);
        if (_values.Length < plan.SlotCount) _values = new FindingValue?[plan.SlotCount];
        if (!isPresent) return;
        if (_cells.Length < plan.Own.Planes.Tests.Length) _cells = new Cells[plan.Own.Planes.Tests.Length];
        if (_states.Length < plan.Rules.Length) (_states, _written) = (new RuleState[plan.Rules.Length], new int[plan.Rules.Length]);
        if (_marks.Length < plan.Topics.Length) (_marks, _marked) = (new TopicMarks[plan.Topics.Length], new int[plan.Topics.Length]);
    }

    /// <summary>Forgets the study; what was not written need not be cleared.</summary>
    public void Clear()
    {
        Array.Clear(_values);
        foreach (var position in _written.AsSpan(0, _liveCount)) _states[position] = default;
        foreach (var topic in _marked.AsSpan(0, _markedCount)) _marks[topic] = default;
        (_liveCount, _markedCount, _isOwing) = (0, 0, false);
        Settled.Forget();
        _widened.Forget();
        Candidates.Clear();
    }

    public bool[] MarkFilled()
    {
        if (_filled.Length < Plan.SlotCount) _filled = new bool[Plan.SlotCount];
        Array.Clear(_filled);
        return IsFilled = _filled;
    }

    /// <summary>A lesion has what its structure has, until something else was sent of itself.</summary>
    public void Inherit(Instance whole)
    {
        whole._values.AsSpan(0, Plan.SlotCount).CopyTo(_values);
        (Whole, IsFilled) = (whole.Whole, whole.IsFilled);
    }

    /// <summary>Rules answered per structure are bound to the structure, the others to each lesion of one that has any.</summary>
    public bool Takes(bool isPerStructure) => isPerStructure ? !IsLesion : LesionCount == 0;

    public Truth TruthOf(int position) => Known._states[position].Truth;

    public RuleState StateOf(int position) => Known._states[position];

    /// <summary>Puts another state in its place, for as long as something is only supposed; gives the one that was there.</summary>
    public RuleState Exchange(int position, RuleState state)
    {
        (state, Known._states[position]) = (_states[position], state);
        return state;
    }

    public TopicMarks Exchange(int topic, TopicMarks marks)
    {
        (marks, Known._marks[topic]) = (_marks[topic], marks);
        return marks;
    }

    /// <summary>Room for what the planes settle. It is written down, rule by rule, only when somebody asks for a rule or a topic.</summary>
    public SettledBits Settle(bool isWidened)
    {
        _isOwing = true;
        return isWidened ? _widened : Settled;
    }

    public void WriteDown()
    {
        _isOwing = false;
        if (Settled.IsOwing)
        {
            Settled.CollectLive(_room);
            for (var i = 0; i < _room.Count; i++) WriteDown(_room[i].Position, _room[i].Truth);
        }
        if (!_widened.IsOwing) return;
        _widened.CollectChanged(Settled, _room);
        for (var i = 0; i < _room.Count; i++) WriteWidened(_room[i].Position, _room[i].Truth);
    }

    public void Write(int position, Truth truth, Standing standing)
    {
        _written[_liveCount++] = position;
        _states[position] = new RuleState { IsDecided = true, Truth = truth, Widened = truth, Standing = standing };
    }

    public void WriteWidened(int position, Truth widened)
    {
        ref var state = ref _states[position];
        if (state.Widened == widened) return;
        if (!state.IsDecided) _written[_liveCount++] = position;
        (state.IsDecided, state.Widened) = (true, widened);
    }

    public void Mark(RuleAnswer answer, Standing standing)
    {
        ref var marks = ref _marks[answer.Topic];
        if (!marks.IsMarked) _marked[_markedCount++] = answer.Topic;
        marks.Add(answer.Value, standing);
    }

    /// <summary>Not decided where the topic is answered at the structure and this is a lesion, or the other way round.</summary>
    public TopicState TopicAt(int position) =>
        IsPresent && Takes(Plan.Topics[position].Topic.IsPerStructure) ? Known._marks[position].State : default;

    private void WriteDown(int position, Truth truth)
    {
        var standing = truth == Truth.True ? Standing.Stands : Standing.Unknown;
        Write(position, truth, standing);
        foreach (ref readonly var answer in Plan.Own.Answers[position]) Mark(answer, standing);
    }

    private RuleState[] AllRules()
    {
        if (!IsPresent) return [];
        var rules = new RuleState[Plan.Rules.Length];
        for (var i = 0; i < rules.Length; i++) rules[i].IsDecided = Takes(Plan.Rules[i].Rule.IsPerStructure);
        foreach (var position in Live) rules[position] = _states[position];
        return rules;
    }

    private TopicState[] AllTopics()
    {
        if (!IsPresent) return [];
        var topics = new TopicState[Plan.Topics.Length];
        for (var i = 0; i < topics.Length; i++) topics[i] = TopicAt(i);
        return topics;
    }
}

internal struct RuleState
{
    public bool IsDecided;
    public Truth Truth;
    public Truth Widened;
    public Standing Standing;
}
