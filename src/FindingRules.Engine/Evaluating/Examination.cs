using FindingRules.Engine.Compiling;
using FindingRules.Model.Conditions;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Evaluating;

/// <summary>One study laid out against a network: instances with their values, and what has been decided of them so far.</summary>
internal sealed class Examination(RuleNetwork network)
{
    private readonly List<Instance> _instances = [];
    private readonly Dictionary<(Structure?, Side), int> _sites = [];
    private readonly Dictionary<(Structure?, Side), int> _earlierSites = [];

    public RuleNetwork Network { get; } = network;

    public int Count => _instances.Count;

    public Instance this[int index] => _instances[index];

    public void Add(Instance instance, bool isEarlier = false)
    {
        var sites = isEarlier ? _earlierSites : _sites;
        if (!instance.IsLesion) sites[(instance.Subject.Structure, instance.Subject.Side)] = _instances.Count;
        _instances.Add(instance);
    }

    public bool Has(Structure structure, Side side) => _sites.ContainsKey((structure, side));

    /// <summary>The instance of a whole structure; of one that was not examined, an empty one.</summary>
    public int SiteOf(Structure structure, Side side)
    {
        if (_sites.TryGetValue((structure, side), out var site)) return site;
        var empty = new Instance(new Subject(structure, side, null), Network.PlanOf(structure), isPresent: false) { Whole = Count };
        Add(empty);
        return Count - 1;
    }

    public byte[] MemoOf(int instance, bool isWidened) => _instances[instance].Memo(Network.NodeCount, isWidened);

    public FindingValue? ValueAt(int instance, int slot) => instance < 0 ? null : _instances[instance].Values[slot];

    /// <summary>The state of a topic where it is answered for the instance: at its structure for a topic per structure.</summary>
    public TopicState? TopicAt(int instance, int topicNumber)
    {
        var at = _instances[instance];
        var position = at.Plan.IndexOfTopic(topicNumber);
        if (position < 0) return null;
        if (at.IsLesion && at.Plan.Topics[position].Topic.IsPerStructure) at = _instances[at.Whole];
        return at.IsPresent ? at.Topics[position] : null;
    }

    /// <summary>
    /// The instances that a place may mean, as a run; an empty run where it cannot be told or was not examined.
    /// </summary>
    /// <param name="own">The lesion or structure chosen for <see cref="Place.Own"/>, or -1.</param>
    public (int Start, int Count) Resolve(Place place, int instance, int own)
    {
        if (place.IsEarlier) return ResolveEarlier(place, instance, own);
        var subject = _instances[instance].Subject;
        return place.Relation switch
        {
            PlaceRelation.Own => RunAt(instance),
            PlaceRelation.Study => (0, 1),
            _ => SideAt(place, subject) is { } side && _sites.TryGetValue((place.Structure ?? subject.Structure, side), out var site)
                ? RunAt(site)
                : default,
        };
    }

    private (int Start, int Count) ResolveEarlier(Place place, int instance, int own)
    {
        var subject = _instances[own >= 0 && place.Relation == PlaceRelation.Own ? own : instance].Subject;
        var structure = place.Relation is PlaceRelation.Study ? null : place.Structure ?? subject.Structure;
        var side = place.Relation switch
        {
            PlaceRelation.Study => Side.None,
            PlaceRelation.Own => subject.Side,
            _ => SideAt(place, subject),
        };
        if (side is null or Side.Unknown || !_earlierSites.TryGetValue((structure, side.Value), out var site)) return default;
        if (place.Relation != PlaceRelation.Own || subject.Lesion is null) return RunAt(site);
        for (var i = site + 1; i <= site + _instances[site].LesionCount; i++)
            if (_instances[i].Subject.Lesion == subject.Lesion)
                return (i, 1);
        return _instances[site].LesionCount == 0 ? (site, 1) : default;
    }

    private (int Start, int Count) RunAt(int index) =>
        _instances[index] is { IsLesion: false, LesionCount: > 0 and var lesions } ? (index + 1, lesions) : (index, 1);

    /// <summary>Null where the side cannot be told.</summary>
    private static Side? SideAt(Place place, Subject subject)
    {
        var structure = place.Structure ?? subject.Structure;
        // The same side without a structure is the other side of the other side, and the midline has neither.
        if (structure is { IsPaired: false })
            return place is { Relation: PlaceRelation.Ipsilateral, Structure: not null } ? Side.None : null;
        if (subject.Side is not (Side.Left or Side.Right)) return null;
        return place.Relation == PlaceRelation.Contralateral ? subject.Side.Other() : subject.Side;
    }
}
