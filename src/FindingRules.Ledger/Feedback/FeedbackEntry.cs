using System.Collections.Immutable;
using FindingRules.Ledger.Correlation;

namespace FindingRules.Ledger.Feedback;

/// <summary>What became of suggestions of a reading. Later feedback on a suggestion takes the place of earlier in the
/// counts; both stay.</summary>
public sealed record FeedbackEntry
{
    public required Guid Reading { get; init; }

    public required string Actor { get; init; }

    public required ImmutableArray<SuggestionFeedback> Suggestions { get; init; }

    /// <summary>The codes that the pack lists as reasons for overriding a suggestion.</summary>
    public required ImmutableArray<string> Reasons { get; init; }

    public TraceContext? Correlation { get; init; }
}

/// <param name="Suggestion">Names it within the reading; the sender has checked that the reading has it.</param>
/// <param name="Rules">Ids of the rules that it came from.</param>
/// <param name="Reason">Of an overridden suggestion, a code of the list; of an accepted one null.</param>
public sealed record SuggestionFeedback(string Suggestion, ImmutableArray<string> Rules, bool IsAccepted, string? Reason);
