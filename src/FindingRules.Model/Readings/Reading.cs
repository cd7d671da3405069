using System.Collections.Immutable;
using FindingRules.Model.Packs;

namespace FindingRules.Model.Readings;

/// <summary>
/// One evaluation of one study against one pack. The same pack, engine and study give the same reading, byte for byte,
/// in whatever order findings, rules or files came. Subjects are named by their key: <c>right supraspinatus</c>.
/// </summary>
public sealed record Reading
{
    public required PackIdentity Pack { get; init; }

    /// <summary>Version of the engine.</summary>
    public required string Engine { get; init; }

    public required string Study { get; init; }

    public string? Supersedes { get; init; }

    public ImmutableArray<Suggestion> Suggestions { get; init; } = [];

    /// <summary>The line said of a study in which everything required was assessed and nothing was suggested.</summary>
    public string? Calm { get; init; }

    public ImmutableArray<SuggestedStep> NextSteps { get; init; } = [];

    public ImmutableArray<CautionNote> Cautions { get; init; } = [];

    public ImmutableArray<ProbabilityNote> Probabilities { get; init; } = [];

    public ImmutableArray<WithheldTopic> Held { get; init; } = [];

    public ImmutableArray<ConflictingTopic> Conflicts { get; init; } = [];

    /// <summary>Rules left undecided of which something was sent.</summary>
    public ImmutableArray<UndecidedRule> Unknown { get; init; } = [];

    public ImmutableArray<BorderlineRule> Borderline { get; init; } = [];

    public ImmutableArray<MissingFinding> AskNext { get; init; } = [];

    /// <summary>What a protocol of the study requires and the study does not have.</summary>
    public ImmutableArray<NotAssessed> NotAssessed { get; init; } = [];

    /// <summary>What else the reader must know of how the study was taken, such as a normal that was not filled in.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>Ready to paste: suggestions, next steps, cautions, what is held, borderline or not assessed, the notice.</summary>
    public required string ImpressionText { get; init; }

    public required string Notice { get; init; }
}

public sealed record PackIdentity(string Name, string Version, string MeaningDigest, string TextDigest, bool IsDemonstration);

public sealed record RuleReference(string Id, string Revision);

/// <summary>A published source as a reader sees it.</summary>
public sealed record SourceNote(ImmutableArray<string> Facts, string Cites, string Status, string? Choice);

/// <summary>One finding that a rule rests on.</summary>
/// <param name="Statement">The rule's own words.</param>
/// <param name="Threshold">What a measure was compared with.</param>
/// <param name="Distance">How far the measure is from it.</param>
/// <param name="IsFromNormal">Filled in because the subject was sent as normal.</param>
public sealed record Evidence(
    string Subject, string Finding, string Value, string Statement, string? Threshold, string? Distance, bool IsFromNormal);

public sealed record Suggestion(
    string Text, string Topic, string Value, string Certainty, string Subject, Code? Code,
    ImmutableArray<RuleReference> Rules, ImmutableArray<Evidence> RestsOn, ImmutableArray<SourceNote> Sources,
    ImmutableArray<string> Choices, bool IsBorderline);

/// <param name="Step">The step's name; <c>evaluate right subscapularis</c> for looking at a structure.</param>
/// <param name="Found">Of a done step: what was found there.</param>
public sealed record SuggestedStep(
    string Step, string Text, string Urgency, bool IsDone, ImmutableArray<string> Found, ImmutableArray<string> Subjects,
    ImmutableArray<RuleReference> Rules, ImmutableArray<Evidence> RestsOn, ImmutableArray<SourceNote> Sources);

public sealed record CautionNote(
    string Caution, string Text, ImmutableArray<string> Subjects, ImmutableArray<RuleReference> Rules, ImmutableArray<Evidence> RestsOn);

/// <summary>A probability after a finding, worked out exactly and rounded only here.</summary>
/// <param name="Of">What the probability is of.</param>
/// <param name="Finding">positive or negative.</param>
/// <param name="Before">Such as 10 %.</param>
/// <param name="After">To a tenth of a percent.</param>
/// <param name="AfterExact">The exact fraction, such as 7/30.</param>
/// <param name="Range">What the published intervals allow, such as 17 % to 32 %; null where none are published.</param>
/// <param name="Figures">The figures that were used.</param>
public sealed record ProbabilityNote(
    string Text, string Subject, string Of, string Finding, string Before, string After, string AfterExact, string? Range,
    string Figures, ImmutableArray<RuleReference> Rules, ImmutableArray<Evidence> RestsOn, ImmutableArray<SourceNote> Sources);

/// <summary>A topic withheld until something is checked.</summary>
/// <param name="WouldBe">The values that rules would have given.</param>
public sealed record WithheldTopic(
    string Topic, string Subject, ImmutableArray<string> WouldBe, ImmutableArray<string> Because,
    ImmutableArray<RuleReference> Rules, ImmutableArray<Evidence> RestsOn);

public sealed record ConflictingTopic(string Topic, string Subject, ImmutableArray<ConflictingValue> Values);

public sealed record ConflictingValue(string Value, ImmutableArray<RuleReference> Rules, ImmutableArray<Evidence> RestsOn);

/// <summary>A rule that the findings neither make true nor false, or that something unknown could withdraw.</summary>
/// <param name="WouldConclude">What would follow, in the rule's words.</param>
/// <param name="Missing">What would settle it.</param>
/// <param name="WaitsFor">Rules whose outcome could withdraw it.</param>
public sealed record UndecidedRule(
    RuleReference Rule, string Subject, string WouldConclude, ImmutableArray<MissingKey> Missing, ImmutableArray<string> WaitsFor);

public sealed record MissingKey(string Subject, string Finding);

/// <summary>A rule whose truth would differ somewhere within the precision of the measurements it uses.</summary>
/// <param name="Applies">Its truth for the values as sent.</param>
public sealed record BorderlineRule(
    RuleReference Rule, string Subject, bool Applies, string WouldConclude, ImmutableArray<Evidence> Measures);

/// <param name="Settles">Ids of the undecided rules that wait for it.</param>
public sealed record MissingFinding(string Subject, string Finding, string Text, ImmutableArray<string> Settles);

/// <param name="IsNotAssessable">It was looked for and could not be judged; otherwise it was not sent.</param>
public sealed record NotAssessed(string Protocol, string Subject, ImmutableArray<string> Findings, bool IsNotAssessable);
