using FindingRules.Model.Vocabularies;

namespace FindingRules.Model.Conditions;

/// <summary>A condition as an author would write it, in one line.</summary>
internal static class ConditionWords
{
    public static string Of(Condition condition) => condition switch
    {
        AllOf all => string.Join(" and ", all.Parts.Select(p => Inner(p, isBracketed: IsLong(p)))),
        AnyOf any => string.Join(" or ", any.Parts.Select((p, i) => Inner(p, IsList(p) || IsMistakenForValue(any, i)))),
        Negation negation => Not(negation.Part),
        Quantified quantified => $"{Counted(quantified)} {Name(quantified.Range)} where ({Of(quantified.Where)})",
        ValueStatement value => $"{Path(value.Place, value.Finding.Name)} {string.Join(" or ", value.Values)}",
        TopicStatement topic => $"{Path(topic.Place, topic.Topic.Name)} {string.Join(" or ", topic.Values)}",
        SignStatement sign => Path(sign.Place, sign.Finding.Name),
        ExtentStatement extent => Extent(extent),
        AssessedStatement assessed => $"{AssessedPath(assessed)}assessed",
        NotAssessableStatement tried => $"{Path(tried.Place, tried.Finding.Name)} not assessable",
        ComparisonStatement comparison =>
            $"{QuantityWords.Of(comparison.Left)} {Word(comparison.Comparator)} {QuantityWords.Of(comparison.Right)}",
        BetweenStatement between =>
            $"{QuantityWords.Of(between.Value)} between {QuantityWords.Of(between.Low)} and {QuantityWords.Of(between.High)}",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    public static string Path(Place place, string name)
    {
        var relation = place.Relation switch
        {
            PlaceRelation.Ipsilateral => "ipsilateral ",
            PlaceRelation.Contralateral => "contralateral ",
            _ => "",
        };
        var structure = place.Structure is null ? "" : $"{place.Structure.Name} ";
        return $"{(place.IsEarlier ? "earlier " : "")}{relation}{structure}{name}";
    }

    /// <summary>Empty for the subject itself: the word assessed then stands alone.</summary>
    private static string AssessedPath(AssessedStatement assessed) =>
        assessed.Finding is { } finding ? $"{Path(assessed.Place, finding.Name)} " : Path(assessed.Place, "");

    private static string Name(Scope range) =>
        range.Written.StartsWith("each ", StringComparison.Ordinal) ? range.Written["each ".Length..] : range.Written;

    private static string Counted(Quantified quantified) => quantified.Quantifier switch
    {
        Quantifier.AtLeast => $"at least {quantified.Count}",
        var quantifier => quantifier.ToString().ToLowerInvariant(),
    };

    private static string Not(Condition part) => part switch
    {
        SignStatement => $"no {Of(part)}",
        AssessedStatement assessed => $"{AssessedPath(assessed)}not assessed",
        ValueStatement { Values: [var value] } says => $"{Path(says.Place, says.Finding.Name)} is not {value}",
        TopicStatement { Values: [var value] } says => $"{Path(says.Place, says.Topic.Name)} is not {value}",
        _ => $"not {Inner(part, IsLong(part) || part is Negation or NotAssessableStatement)}",
    };

    private static string Extent(ExtentStatement extent)
    {
        var points = extent.Finding.Type is ExtentType type ? type.Axis.Points : [];
        var words = $"{Path(extent.Place, extent.Finding.Name)} {extent.Relation.ToString().ToLowerInvariant()} {points[extent.From]}";
        return extent.Relation == ExtentRelation.Spans || extent.From != extent.To ? $"{words} to {points[extent.To]}" : words;
    }

    private static string Word(Comparator comparator) => comparator switch
    {
        Comparator.Above => "above",
        Comparator.AtLeast => "at least",
        Comparator.Below => "below",
        Comparator.AtMost => "at most",
        _ => "=",
    };

    private static string Inner(Condition part, bool isBracketed) => isBracketed ? $"({Of(part)})" : Of(part);

    private static bool IsList(Condition part) => part is AllOf or AnyOf;

    private static bool IsLong(Condition part) =>
        IsList(part) || part is ValueStatement { Values.Count: > 1 } or TopicStatement { Values.Count: > 1 };

    /// <summary>A sign behind <c>or</c> whose name is also a value of the statement before it.</summary>
    private static bool IsMistakenForValue(AnyOf any, int index) =>
        index > 0
        && any.Parts[index] is SignStatement { Place: { IsEarlier: false, Structure: null } place } sign
        && place.Relation is PlaceRelation.Own or PlaceRelation.Study
        && (any.Parts[index - 1] is Negation negation ? negation.Part : any.Parts[index - 1]) switch
        {
            ValueStatement { Finding.Type: ChoiceType choice } => choice.Values.Contains(sign.Finding.Name),
            TopicStatement topic => topic.Topic.Find(sign.Finding.Name) is not null,
            _ => false,
        };
}
