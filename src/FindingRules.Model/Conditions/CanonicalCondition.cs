using FindingRules.Model.Vocabularies;

namespace FindingRules.Model.Conditions;

/// <summary>The canonical text of a condition: operands sorted, every place said, brackets around every inner list.</summary>
internal static class CanonicalCondition
{
    public static string Of(Condition condition) => condition switch
    {
        AllOf all => Join(" and ", all.Parts.SelectMany(Flatten<AllOf>)),
        AnyOf any => Join(" or ", any.Parts.SelectMany(Flatten<AnyOf>)),
        Negation { Part: Negation inner } => Of(inner.Part),
        Negation negation => $"not {Inner(negation.Part)}",
        Quantified quantified => $"{Counted(quantified)} {Names(quantified.Range)} where ({Of(quantified.Where)})",
        ValueStatement value => $"{At(value.Place)} {value.Finding.Name} is {Values(value.Values)}",
        TopicStatement topic => $"{At(topic.Place)} topic {topic.Topic.Name} is {Values(topic.Values)}",
        SignStatement sign => $"{At(sign.Place)} {sign.Finding.Name}",
        ExtentStatement extent => Extent(extent),
        AssessedStatement assessed =>
            assessed.Finding is null ? $"{At(assessed.Place)} assessed" : $"{At(assessed.Place)} {assessed.Finding.Name} assessed",
        NotAssessableStatement tried => $"{At(tried.Place)} {tried.Finding.Name} not assessable",
        ComparisonStatement comparison =>
            $"{CanonicalQuantity.Of(comparison.Left)} {Mark(comparison.Comparator)} {CanonicalQuantity.Of(comparison.Right)}",
        BetweenStatement between =>
            $"{CanonicalQuantity.Of(between.Value)} between {CanonicalQuantity.Of(between.Low)} and {CanonicalQuantity.Of(between.High)}",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>Always said, so that a name that is both a finding and a fact cannot be mistaken.</summary>
    public static string At(Place place)
    {
        var relation = place.Relation.ToString().ToLowerInvariant();
        var structure = place.Structure is null ? "" : $" {place.Structure.Name}";
        return $"{(place.IsEarlier ? "earlier " : "")}{relation}{structure}";
    }

    /// <summary>The structures, because a rule means something else when its kind gets another one.</summary>
    private static string Names(Scope range) => $"[{string.Join(' ', range.Structures.Select(s => s.Name).Order(StringComparer.Ordinal))}]";

    private static string Counted(Quantified quantified) => quantified.Quantifier switch
    {
        Quantifier.AtLeast => $"at least {quantified.Count}",
        var quantifier => quantifier.ToString().ToLowerInvariant(),
    };

    private static string Extent(ExtentStatement extent)
    {
        var points = extent.Finding.Type is ExtentType type ? type.Axis.Points : [];
        var relation = extent.Relation.ToString().ToLowerInvariant();
        return $"{At(extent.Place)} {extent.Finding.Name} {relation} {points[extent.From]} to {points[extent.To]}";
    }

    private static string Mark(Comparator comparator) => comparator switch
    {
        Comparator.Above => ">",
        Comparator.AtLeast => ">=",
        Comparator.Below => "<",
        Comparator.AtMost => "<=",
        _ => "=",
    };

    private static string Values(IEnumerable<string> values) => string.Join('|', values.Order(StringComparer.Ordinal));

    private static string Inner(Condition part) => part is AllOf or AnyOf ? $"({Of(part)})" : Of(part);

    private static string Join(string connector, IEnumerable<Condition> parts) =>
        string.Join(connector, parts.Select(Inner).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));

    private static IEnumerable<Condition> Flatten<T>(Condition part)
        where T : Condition => (part, typeof(T)) switch
        {
            (AllOf all, _) when part is T => all.Parts.SelectMany(Flatten<T>),
            (AnyOf any, _) when part is T => any.Parts.SelectMany(Flatten<T>),
            (Negation { Part: Negation inner }, _) => Flatten<T>(inner.Part),
            _ => [part],
        };
}
