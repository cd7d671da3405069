using System.Collections.Immutable;
using FindingRules.Ledger.Records;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Ledger.Feedback;

/// <summary>Whether feedback may be recorded: a reading that is there, each suggestion once, reasons of the list only.</summary>
internal static class FeedbackCheck
{
    public static ImmutableArray<Message> Of(FeedbackEntry entry, LedgerRecord? reading)
    {
        if (reading is not { Kind: RecordKind.Reading }) return [LedgerUseMessages.NoSuchReading(entry.Reading.ToString())];
        if (reading.IsErased) return [LedgerUseMessages.ReadingErased(entry.Reading.ToString())];
        if (entry.Suggestions.IsEmpty) return [LedgerUseMessages.NoFeedback()];
        var messages = ImmutableArray.CreateBuilder<Message>();
        foreach (var suggestion in entry.Suggestions)
            if (Of(suggestion, entry.Reasons) is { } message)
                messages.Add(message);
        foreach (var twice in entry.Suggestions.GroupBy(s => s.Suggestion, StringComparer.Ordinal).Where(g => g.Count() > 1))
            messages.Add(LedgerUseMessages.SuggestionTwice(twice.Key));
        return messages.ToImmutable();
    }

    private static Message? Of(SuggestionFeedback feedback, ImmutableArray<string> reasons)
    {
        if (feedback.IsAccepted) return feedback.Reason is null ? null : LedgerUseMessages.ReasonForAccepted(feedback.Suggestion);
        if (feedback.Reason is null) return LedgerUseMessages.ReasonMissing(feedback.Suggestion, reasons);
        return reasons.Contains(feedback.Reason) ? null : LedgerUseMessages.ReasonUnknown(feedback.Suggestion, feedback.Reason, reasons);
    }
}
