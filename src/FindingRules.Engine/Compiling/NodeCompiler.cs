using System.Collections.Immutable;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Compiling;

/// <summary>Bound conditions in, nodes out; the same condition gives the same node.</summary>
internal sealed class NodeCompiler(FindingSlots slots, IReadOnlyDictionary<Topic, int> topicNumbers)
{
    private readonly Dictionary<string, Node> _nodes = new(StringComparer.Ordinal);

    public int Count => _nodes.Count;

    public Node Compile(Condition condition) => condition switch
    {
        AllOf all => Parts("and", all.Parts, (id, parts) => new AllNode(id, parts)),
        AnyOf any => Parts("or", any.Parts, (id, parts) => new AnyNode(id, parts)),
        Negation negation => Parts("not", [negation.Part], (id, parts) => new NotNode(id, parts[0])),
        Quantified counted => Parts(
            $"count {counted.Quantifier} {counted.Count} {string.Join(',', counted.Range.Structures)}", [counted.Where],
            (id, parts) => new CountNode(id, counted.Quantifier, counted.Count, counted.Range, parts[0])),
        Statement statement => Statement(statement),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>A quantity of the scope's own subject.</summary>
    public AmountNode Compile(QuantityExpression amount) =>
        (AmountNode)Amounts([amount], "value", (id, places, amounts) => new AmountNode(id, places, amounts[0]));

    private Node Statement(Statement statement) => statement switch
    {
        ValueStatement s => At(s.Place, $"{Slot(s.Finding)} in {string.Join('|', s.Values)}",
            (id, places) => new ValueNode(id, places, slots[s.Finding], [.. s.Values])),
        SignStatement s => At(s.Place, $"{Slot(s.Finding)} present", (id, places) => new SignNode(id, places, slots[s.Finding])),
        ExtentStatement s => At(s.Place, $"{Slot(s.Finding)} {s.Relation} {s.From} {s.To}",
            (id, places) => new ExtentNode(id, places, slots[s.Finding], s.Relation, s.From, s.To)),
        AssessedStatement s => At(s.Place, $"{(s.Finding is null ? "structure" : Slot(s.Finding))} assessed",
            (id, places) => new AssessedNode(id, places, s.Finding is null ? -1 : slots[s.Finding])),
        NotAssessableStatement s => At(s.Place, $"{Slot(s.Finding)} not assessable",
            (id, places) => new NotAssessableNode(id, places, slots[s.Finding])),
        TopicStatement s => At(s.Place, $"topic {topicNumbers[s.Topic]} {MaskOf(s):x}",
            (id, places) => new TopicNode(id, places, topicNumbers[s.Topic], MaskOf(s))),
        ComparisonStatement s => Amounts([s.Left, s.Right], $"compare {s.Comparator}",
            (id, places, amounts) => new ComparisonNode(id, places, amounts[0], s.Comparator, amounts[1])),
        BetweenStatement s => Amounts([s.Value, s.Low, s.High], "between",
            (id, places, amounts) => new BetweenNode(id, places, amounts[0], amounts[1], amounts[2])),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private Node Parts(string key, ImmutableArray<Condition> parts, Func<int, ImmutableArray<Node>, Node> make)
    {
        ImmutableArray<Node> nodes = [.. parts.Select(Compile)];
        return Shared($"{key}({string.Join(',', nodes.Select(n => n.Id))})", id => make(id, nodes));
    }

    private Node At(Place place, string key, Func<int, ImmutableArray<Place>, Node> make) =>
        Shared($"{KeyOf(place)}: {key}", id => make(id, PlacesOf([place])));

    private Node Amounts(
        ImmutableArray<QuantityExpression> expressions, string key, Func<int, ImmutableArray<Place>, ImmutableArray<Amount>, Node> make)
    {
        var used = new List<Place>();
        foreach (var expression in expressions) AmountCompiler.CollectPlaces(expression, Place.Own, used);
        var places = PlacesOf([.. used.Distinct()]);
        var amounts = new AmountCompiler(slots, places);
        var texts = string.Join(" ; ", expressions.Select(e => amounts.KeyOf(e, Place.Own)));
        return Shared($"{key} {texts}", id => make(id, places, [.. expressions.Select(e => amounts.Compile(e, Place.Own))]));
    }

    private Node Shared(string key, Func<int, Node> make)
    {
        if (_nodes.TryGetValue(key, out var known)) return known;
        var node = make(_nodes.Count);
        _nodes.Add(key, node);
        return node;
    }

    /// <summary>What was seen before is that of the lesion chosen now, so the place of now is chosen first.</summary>
    private static ImmutableArray<Place> PlacesOf(ImmutableArray<Place> used)
    {
        var needsOwn = used.Any(p => p.Relation == PlaceRelation.Own);
        var first = used.Where(p => p.FollowsLesion).Select(StatementNode.OfNow);
        return [.. needsOwn ? [Place.Own] : ImmutableArray<Place>.Empty, .. first.Concat(used).Where(p => p != Place.Own).Distinct()];
    }

    private static ulong MaskOf(TopicStatement statement)
    {
        var mask = 0UL;
        for (var i = 0; i < statement.Topic.Values.Length; i++)
            if (statement.Values.Contains(statement.Topic.Values[i].Name))
                mask |= 1UL << i;
        return mask;
    }

    private string Slot(Finding finding) => AmountCompiler.KeyOf(finding, slots[finding]);

    private static string KeyOf(Place place) => $"{place.Relation} {place.Structure?.Name} {(place.IsEarlier ? "earlier" : "")}";
}
