using System.Collections.Immutable;
using System.Text.Json.Serialization;
using FindingRules.Model.Readings;
using FindingRules.Model.Truths;

namespace FindingRules.Model.Explanations;

/// <summary>One rule at one subject: how true its condition is and what was made of that.</summary>
public sealed record Proof
{
    public required RuleReference Rule { get; init; }

    public required string Subject { get; init; }

    /// <summary>As a sentence names it: right supraspinatus tendon.</summary>
    public required string SubjectTitle { get; init; }

    /// <summary>The rule as the file words it.</summary>
    public required string Text { get; init; }

    public required FilePlace Place { get; init; }

    public required Truth Truth { get; init; }

    /// <summary>false, unknown, yields, open or stands.</summary>
    public required string Standing { get; init; }

    /// <summary>Its truth would differ somewhere within the precision of the measurements it uses.</summary>
    public required bool IsBorderline { get; init; }

    /// <summary>What follows, in the words of the language.</summary>
    public required string Follows { get; init; }

    public required string Because { get; init; }

    public string? Choice { get; init; }

    public ImmutableArray<SourceNote> Sources { get; init; } = [];

    public required ProofPart Condition { get; init; }

    /// <summary>Every rule that this one yields to.</summary>
    public ImmutableArray<RuleGlance> Superiors { get; init; } = [];

    /// <summary>The topics that it answers.</summary>
    public ImmutableArray<AnswerKey> Gives { get; init; } = [];

    public ProofKey Key => new(Rule.Id, Subject);
}

/// <summary>A rule that was looked at without being proven here.</summary>
/// <param name="Value">The value of the topic that it would give, where it was looked at for that.</param>
/// <param name="Text">The rule as the file words it.</param>
public sealed record RuleGlance(string Rule, string Text, Truth Truth, string Standing, string? Value);

/// <summary>A condition or a part of one.</summary>
/// <param name="Sort">all, any, not, count or statement.</param>
/// <param name="Words">As an author would write it.</param>
/// <param name="Subject">Of a part of a count: the structure that is counted; elsewhere null.</param>
/// <param name="Looks">Of a statement: what it looked at, one entry for each lesion (or pair of lesions) that mattered.</param>
public sealed record ProofPart(
    string Sort, string Words, FilePlace Place, Truth Truth, string? Subject, ImmutableArray<ProofPart> Parts, ImmutableArray<Look> Looks)
{
    /// <summary>Of a count: what its parts are that carry its truth; elsewhere null.</summary>
    [JsonIgnore]
    public Truth? CarriedBy { get; init; }
}

/// <summary>What a statement looked at, once.</summary>
/// <param name="Calculation">Of a comparison: what was worked out and compared.</param>
/// <param name="Answer">Of a test of a topic: what became of the topic.</param>
public sealed record Look(Truth Truth, ImmutableArray<SeenValue> Values, Calculation? Calculation, AnswerKey? Answer);

/// <summary>One value that was looked up.</summary>
/// <param name="Subject">Whose; <c>earlier right supraspinatus</c> in the earlier study.</param>
/// <param name="Value">As a person reads it; null where none is known.</param>
/// <param name="Origin">sent, normal (filled in because the subject was sent as normal), not-assessable or not-sent.</param>
/// <param name="Place">Where the study says so.</param>
public sealed record SeenValue(
    string Subject, string SubjectTitle, string Finding, string Title, string? Value, string Origin, StudyPlace? Place);

/// <summary>A comparison with its numbers, exact.</summary>
/// <param name="Relation">above, at least, below, at most, equal to, or between.</param>
/// <param name="Right">One quantity, or the two ends of a stretch.</param>
/// <param name="Distance">From the value to the nearest threshold, where both are one number.</param>
/// <param name="Threshold">That threshold.</param>
/// <param name="Precision">Of the measurements in it, added up; null where they have none.</param>
/// <param name="IsWithinPrecision">With the measurements a little off it could be decided otherwise.</param>
public sealed record Calculation(
    WorkedOut Left, string Relation, ImmutableArray<WorkedOut> Right, string? Threshold, string? Distance, string? Precision,
    bool IsWithinPrecision);

/// <summary>A quantity with what it was worked out from.</summary>
/// <param name="Sort">number, measure, derived, or the sign of the operation: + - * /.</param>
/// <param name="Words">As an author would write it.</param>
/// <param name="Title">Of a measure, found or worked out: as a sentence names it.</param>
/// <param name="Value">Exact, such as 14 mm or 2 mm to 3 mm; null where it is unknown.</param>
/// <param name="Exact">The exact fraction in base units, where it is one number that no short decimal shows.</param>
public sealed record WorkedOut(string Sort, string Words, string? Title, string? Value, string? Exact, ImmutableArray<WorkedOut> From);

/// <summary>What became of one topic at one subject.</summary>
/// <param name="Status">published, none, conflict, held or open.</param>
/// <param name="Value">Of a published topic.</param>
/// <param name="Givers">Every rule in force that could give it a value.</param>
/// <param name="Holders">Every rule in force that could hold it.</param>
/// <param name="Proven">Those of them whose proofs settle the matter.</param>
public sealed record TopicAnswer(
    string Topic, string Title, string Subject, string SubjectTitle, string Status, string? Value, string? ValueTitle,
    ImmutableArray<RuleGlance> Givers, ImmutableArray<RuleGlance> Holders, ImmutableArray<ProofKey> Proven)
{
    public AnswerKey Key => new(Topic, Subject);
}
