using System.Collections.Immutable;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Model.Conditions;

/// <summary>A condition with every word resolved to one meaning.</summary>
/// <param name="Location">Where it stands in the rule file.</param>
public abstract record Condition(Location Location);

public sealed record AllOf(ImmutableArray<Condition> Parts, Location Location) : Condition(Location);

public sealed record AnyOf(ImmutableArray<Condition> Parts, Location Location) : Condition(Location);

public sealed record Negation(Condition Part, Location Location) : Condition(Location);

/// <summary>
/// Counts the structures of <paramref name="Range"/> (on the side of the rule's subject, or on every side in a study
/// rule) for which <paramref name="Where"/> is true. Within <paramref name="Where"/> <see cref="Place.Own"/> is the
/// counted structure.
/// </summary>
public sealed record Quantified(Quantifier Quantifier, int Count, Scope Range, Condition Where, Location Location)
    : Condition(Location)
{
    /// <summary>What the condition has to be of a structure for that structure to carry this truth of the whole.</summary>
    public Truth CarriedBy(Truth truth) => Quantifier == Quantifier.No ? Kleene.Not(truth) : truth;

    /// <summary>So many may stand inside each other: each looks at every structure of its range for every one of the outer.</summary>
    public const int MostNested = 3;
}

public enum Quantifier
{
    Any,
    Every,
    No,
    AtLeast,
}

/// <summary>A part that has no smaller conditions in it. True of a structure with several lesions if true of one.</summary>
public abstract record Statement(Location Location) : Condition(Location);

/// <summary>A choice finding has one of the values.</summary>
public sealed record ValueStatement(Place Place, Finding Finding, ImmutableSortedSet<string> Values, Location Location)
    : Statement(Location);

/// <summary>A sign is present.</summary>
public sealed record SignStatement(Place Place, Finding Finding, Location Location) : Statement(Location);

/// <summary>A topic was answered with one of the values.</summary>
public sealed record TopicStatement(Place Place, Topic Topic, ImmutableSortedSet<string> Values, Location Location)
    : Statement(Location);

public sealed record ComparisonStatement(QuantityExpression Left, Comparator Comparator, QuantityExpression Right, Location Location)
    : Statement(Location);

/// <summary>Both ends belong to it.</summary>
public sealed record BetweenStatement(QuantityExpression Value, QuantityExpression Low, QuantityExpression High, Location Location)
    : Statement(Location);

/// <summary>From and to are indices of the axis' points, from at most to.</summary>
public sealed record ExtentStatement(Place Place, Finding Finding, ExtentRelation Relation, int From, int To, Location Location)
    : Statement(Location);

/// <summary>A finding, or where <paramref name="Finding"/> is null the structure, was assessed. Never unknown.</summary>
public sealed record AssessedStatement(Place Place, Finding? Finding, Location Location) : Statement(Location);

/// <summary>Somebody tried and could not tell: the finding was sent as not assessable. Never unknown.</summary>
public sealed record NotAssessableStatement(Place Place, Finding Finding, Location Location) : Statement(Location);

public enum Comparator
{
    Above,
    AtLeast,
    Below,
    AtMost,
    Equal,
}

public enum ExtentRelation
{
    /// <summary>One interval covers both points and what lies between.</summary>
    Spans,

    /// <summary>One interval covers the point.</summary>
    Reaches,

    /// <summary>There is an interval, and none leaves the stretch.</summary>
    Within,
}
