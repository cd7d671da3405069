using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR604x: what is wrong with what the ledger was asked.</summary>
public static class LedgerUseMessages
{
    public static Message NoSuchReading(string id) =>
        new(6040, Severity.Error, At("feedback"), $"the ledger has no reading `{id}`, expected the id that came with the answer");

    public static Message ReadingErased(string id) =>
        new(6041, Severity.Error, At("feedback"), $"the reading `{id}` was erased, expected one whose suggestions are still known");

    public static Message NoFeedback() =>
        new(6042, Severity.Error, At("feedback"), "the feedback speaks of no suggestion, expected at least one");

    public static Message SuggestionTwice(string suggestion) =>
        new(6043, Severity.Error, At("feedback"),
            $"the feedback speaks of the suggestion `{suggestion}` more than once, expected it once");

    public static Message ReasonForAccepted(string suggestion) =>
        new(6044, Severity.Error, At("feedback"),
            $"the accepted suggestion `{suggestion}` has a reason, expected reasons for overridden ones only");

    public static Message ReasonMissing(string suggestion, IReadOnlyCollection<string> reasons) =>
        new(6045, Severity.Error, At("feedback"),
            $"the overridden suggestion `{suggestion}` has no reason, expected {Spelling.List(reasons)}");

    public static Message ReasonUnknown(string suggestion, string found, IReadOnlyCollection<string> reasons) =>
        new(
            6046, Severity.Error, At("feedback"),
            $"the suggestion `{suggestion}` was overridden for the reason `{found}`, expected {Spelling.List(reasons)}")
        {
            Label = Spelling.Closest(found, reasons) is { } closest ? $"did you mean `{closest}`?" : null,
        };

    public static Message CursorOfAnother(string cursor) =>
        new(6047, Severity.Error, At("search"), $"the cursor `{cursor}` does not belong to this question")
        {
            Label = "ask with the cursor that the page before gave, and with nothing else changed",
        };

    public static Message SizeBeyondTree(long asked, long size) =>
        new(6048, Severity.Error, At("proof"), $"a proof for {asked} records was asked of a ledger that has {size}")
        {
            Label = "if a signed tree head says that there were so many, records were cut off: keep the head and call for an audit",
        };

    public static Message SizeTooSmall(long asked, long least) =>
        new(6049, Severity.Error, At("proof"),
            $"a proof was asked for a tree of {asked} records, expected at least {least} for what is to be proven");

    private static Location At(string what) => new SourceText(what, "").Whole;
}
