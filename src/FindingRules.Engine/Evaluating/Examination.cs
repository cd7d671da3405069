using FindingRules.Engine.Compiling;
using FindingRules.Engine.Compiling.Planes;
using FindingRules.Engine.Normalising;
using FindingRules.Model.Conditions;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Evaluating;

/// <summary>One study laid out against a network: instances with their values, and what has been decided of them so far.</summary>
internal sealed class Examination(RuleNetwork network)
{
    private const int SidesOfPlan = 4;
    private static readonly Place _earlierOwn = Place.Own with { IsEarlier = true };

    private readonly List<Instance> _instances = [];
    private readonly int[] _sites = new int[SidesOfPlan * network.PlanCount];
    private readonly int[] _earlierSites = new int[SidesOfPlan * network.PlanCount];
    private Cells[] _cells = [];

    public RuleNetwork Network { get; } = network;

    public int Count { get; private set; }

    public Instance this[int index] => _instances[index];

    public TruthMemo Memo { get; } = new();

    public CanonicalOrder Order { get; } = new();

    /// <summary>What was done, for tests that it follows the study.</summary>
    public WorkCount Work { get; } = new();

    public Instance Add(StructurePlan plan, Side side, string? lesion, bool isPresent, bool isEarlier = false)
    {
        if (Count == _instances.Count) _instances.Add(new Instance());
        var instance = _instances[Count];
        instance.Use(plan, side, lesion, isPresent);
        instance.Whole = Count++;
        if (lesion is null) (isEarlier ? _earlierSites : _sites)[SiteKey(plan, side)] = Count;
        return instance;
    }

    /// <summary>Forgets the study and keeps the room.</summary>
    public void Clear()
    {
        for (var i = 0; i < Count; i++)
        {
            var instance = _instances[i];
            _sites[SiteKey(instance.Plan, instance.Side)] = 0;
            _earlierSites[SiteKey(instance.Plan, instance.Side)] = 0;
            instance.Clear();
        }
        Count = 0;
        Memo.Forget();
    }

    public bool Has(StructurePlan plan, Side side) => _sites[SiteKey(plan, side)] != 0;

    /// <summary>The instance of a whole structure; negative where there is none.</summary>
    public int Find(Structure structure, Side side) => _sites[SiteKey(Network.PlanOf(structure), side)] - 1;

    /// <summary>The instance of a whole structure; of one that was not examined, an empty one.</summary>
    public int SiteOf(Structure structure, Side side)
    {
        var plan = Network.PlanOf(structure);
        if (_sites[SiteKey(plan, side)] is var site && site != 0) return site - 1;
        Add(plan, side, null, isPresent: false);
        return Count - 1;
    }

    public FindingValue? ValueAt(int instance, int slot) => instance < 0 ? null : _instances[instance].Values[slot];

    /// <summary>The state of a topic where it is answered for the instance: at its structure for a topic per structure.</summary>
    public TopicState? TopicAt(int instance, int topicNumber)
    {
        var at = _instances[instance];
        var position = at.Plan.IndexOfTopic(topicNumber);
        if (position < 0) return null;
        if (at.IsLesion && at.Plan.Topics[position].Topic.IsPerStructure) at = _instances[at.Whole];
        return at.IsPresent ? at.TopicAt(position) : null;
    }

    /// <summary>
    /// The instances that a place may mean, as a run; an empty run where it cannot be told or was not examined.
    /// </summary>
    /// <param name="own">
    /// The lesion or structure chosen for <see cref="Place.Own"/>, or for the place of now that the place follows; or -1.
    /// </param>
    public (int Start, int Count) Resolve(Place place, int instance, int own)
    {
        if (place.FollowsLesion && own >= 0) return ResolveEarlier(_earlierOwn, _instances[own]);
        if (place.IsEarlier) return ResolveEarlier(place, _instances[own >= 0 && place.Relation == PlaceRelation.Own ? own : instance]);
        return place.Relation switch
        {
            PlaceRelation.Own => RunAt(instance),
            PlaceRelation.Study => (0, 1),
            _ => SideAt(place, _instances[instance]) is { } side && Site(_sites, place, _instances[instance], side) is { } site
                ? RunAt(site)
                : default,
        };
    }

    /// <summary>Room for the cells of one instance.</summary>
    public Span<Cells> CellsFor(RulePlanes planes)
    {
        if (_cells.Length < planes.Tests.Length) _cells = new Cells[planes.Tests.Length];
        return _cells.AsSpan(0, planes.Tests.Length);
    }

    private (int Start, int Count) ResolveEarlier(Place place, Instance at)
    {
        var side = place.Relation switch
        {
            PlaceRelation.Study => Side.None,
            PlaceRelation.Own => at.Side,
            _ => SideAt(place, at),
        };
        if (side is null or Side.Unknown || Site(_earlierSites, place, at, side.Value) is not { } site) return default;
        if (place.Relation != PlaceRelation.Own || at.Lesion is null) return RunAt(site);
        for (var i = site + 1; i <= site + _instances[site].LesionCount; i++)
            if (_instances[i].Lesion == at.Lesion)
                return (i, 1);
        return _instances[site].LesionCount == 0 ? (site, 1) : default;
    }

    private int? Site(int[] sites, Place place, Instance at, Side side)
    {
        var plan = place.Relation == PlaceRelation.Study ? Network.StudyPlan
            : place.Structure is null ? at.Plan
            : Network.PlanOfAny(place.Structure);
        return plan is not null && sites[SiteKey(plan, side)] is var site && site != 0 ? site - 1 : null;
    }

    private (int Start, int Count) RunAt(int index) =>
        _instances[index] is { IsLesion: false, LesionCount: > 0 and var lesions } ? (index + 1, lesions) : (index, 1);

    /// <summary>Null where the side cannot be told.</summary>
    private static Side? SideAt(Place place, Instance at)
    {
        var structure = place.Structure ?? at.Structure;
        // The same side without a structure is the other side of the other side, and the midline has neither.
        if (structure is { IsPaired: false })
            return place is { Relation: PlaceRelation.Ipsilateral, Structure: not null } ? Side.None : null;
        if (at.Side is not (Side.Left or Side.Right)) return null;
        return place.Relation == PlaceRelation.Contralateral ? at.Side.Other() : at.Side;
    }

    /// <summary>A number for each structure on each side, in order of name and then of side.</summary>
    public static int SiteKey(StructurePlan plan, Side side) => (SidesOfPlan * plan.Number) + (int)side;
}
