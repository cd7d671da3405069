using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Probabilities;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Model.Packs;

public enum Urgency
{
    Routine,
    Soon,
    Urgent,
}

/// <summary>What to do now. <paramref name="Done"/> speaks of the study; where it is true the step is answered as done.</summary>
public sealed record NextStep(
    string Name, Wording Says, Urgency Urgency, Condition? Done, ImmutableArray<Reference> Sources, Location DeclaredAt)
{
    public bool Equals(NextStep? other) => ReferenceEquals(this, other);

    public override int GetHashCode() => Name.GetHashCode(StringComparison.Ordinal);
}

/// <summary>
/// The step behind <c>evaluate subscapularis</c>. Done when every finding in <paramref name="CompletedBy"/> was assessed.
/// </summary>
public sealed record EvaluateStep(
    Structure Structure, Wording Says, Urgency Urgency, ImmutableArray<Finding> CompletedBy, Location DeclaredAt)
{
    public bool Equals(EvaluateStep? other) => ReferenceEquals(this, other);

    public override int GetHashCode() => Structure.Name.GetHashCode(StringComparison.Ordinal);
}

/// <summary>A pitfall or technique point that qualifies what was concluded.</summary>
public sealed record Caution(string Name, Wording Says, ImmutableArray<Reference> Sources, Location DeclaredAt)
{
    public bool Equals(Caution? other) => ReferenceEquals(this, other);

    public override int GetHashCode() => Name.GetHashCode(StringComparison.Ordinal);
}

/// <summary>Where a rule's content comes from.</summary>
/// <param name="Facts">Ids of published facts, such as F-RCT-01.</param>
/// <param name="Cites">The publication, in a reader's words.</param>
/// <param name="Status">How well the source was read.</param>
/// <param name="Read">The page or text that was read.</param>
/// <param name="Choice">What the pack decided where sources disagree.</param>
public sealed record Reference(
    string Name, ImmutableArray<string> Facts, string Cites, SourceStatus Status, string? Read, string? Choice, Location DeclaredAt)
{
    /// <summary>What the publication says of a finding's accuracy, where a rule may state a probability by it.</summary>
    public Accuracy? Accuracy { get; init; }

    public bool Equals(Reference? other) => ReferenceEquals(this, other);

    public override int GetHashCode() => Name.GetHashCode(StringComparison.Ordinal);
}

public enum SourceStatus
{
    AbstractRead,
    Secondary,
    Computed,
    CommonPractice,
}

/// <summary>What a complete examination assesses. The order is the order of scanning and of the impression.</summary>
public sealed record Protocol(
    string Name, string Title, ImmutableArray<ProtocolItem> Required, ImmutableArray<ProtocolItem> AsIndicated,
    Wording Calm, ImmutableArray<Reference> Sources, Location DeclaredAt)
{
    /// <summary>Facts of the study without which the examination is not complete, such as the position of the arm.</summary>
    public ImmutableArray<Finding> Facts { get; init; } = [];
}

public sealed record ProtocolItem(Structure Structure, ImmutableArray<Finding> Findings, Location DeclaredAt);
