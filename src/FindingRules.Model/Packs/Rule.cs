using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Model.Packs;

public sealed class Rule(string id, Scope scope, Condition condition, ImmutableArray<Conclusion> conclusions, Location declaredAt)
{
    public string Id { get; } = id;

    public Scope Scope { get; } = scope;

    public Condition Condition { get; } = condition;

    public ImmutableArray<Conclusion> Conclusions { get; } = conclusions;

    public Location DeclaredAt { get; } = declaredAt;

    /// <summary>The rule as the file words it, on one line.</summary>
    public required string Text { get; init; }

    public required string Because { get; init; }

    public ImmutableArray<Reference> Sources { get; init; } = [];

    /// <summary>Ids of the rules that yield when this one and they are both true of a subject.</summary>
    public ImmutableArray<string> Over { get; init; } = [];

    public string? Owner { get; init; }

    public DateOnly? Reviewed { get; init; }

    public DateOnly? ReviewBy { get; init; }

    /// <summary>The author's decision where sources disagree.</summary>
    public string? Choice { get; init; }

    /// <summary>The scale this rule is a band of.</summary>
    public string? ScaleName { get; init; }

    /// <summary>Bound to a structure and not to one of its lesions, because its topics are answered per structure.</summary>
    public bool IsPerStructure { get; init; }

    /// <summary>Hash of the canonical form: the same meaning has the same revision. Lower-case hex, 12 digits.</summary>
    public required string Revision { get; init; }

    public IEnumerable<TopicConclusion> Topics => Conclusions.OfType<TopicConclusion>();

    public IEnumerable<HoldConclusion> Holds => Conclusions.OfType<HoldConclusion>();

    public override string ToString() => Id;
}

/// <summary>One thing that follows from a rule.</summary>
public abstract record Conclusion(Location Location);

public sealed record TopicConclusion(Topic Topic, TopicValue Value, Location Location) : Conclusion(Location);

/// <summary>Look at another structure, on the same side.</summary>
public sealed record EvaluateConclusion(EvaluateStep Step, Location Location) : Conclusion(Location);

public sealed record NextStepConclusion(NextStep Step, Location Location) : Conclusion(Location);

public sealed record CautionConclusion(Caution Caution, Location Location) : Conclusion(Location);

/// <summary>Withhold the topic for the subject until something is checked.</summary>
public sealed record HoldConclusion(Topic Topic, Location Location) : Conclusion(Location);

/// <summary>
/// State the probability after the rule's finding, by a reference's figures:
/// <c>probability from pre-test after negative davis-foreign-body</c>.
/// </summary>
/// <param name="Before">The probability before, a plain number or share.</param>
public sealed record ProbabilityConclusion(Reference Reference, QuantityExpression Before, bool IsPositive, Location Location)
    : Conclusion(Location);
