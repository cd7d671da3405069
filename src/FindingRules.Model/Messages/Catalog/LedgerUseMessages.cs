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

    public static Message NotAnId(Location at, string found) =>
        new(6050, Severity.Error, at, $"`{found}` is no id of a record, expected one such as `01890a5d-ac96-774b-bcce-b302099a8057`")
        {
            Label = "the service names it in `Location`, and `findingrules ledger export` in each line",
        };

    public static Message NotATreeHead(string path) =>
        new(6051, Severity.Error, At(path), $"`{path}` holds no tree head, expected the JSON that `findingrules ledger head` writes");

    public static Message NotAPublicKey(string path) =>
        new(6052, Severity.Error, At(path), $"`{path}` holds no public key, expected one in PEM, as `/v1/ledger/public-key` gives it");

    public static Message EraseWhat(Location at) =>
        new(6053, Severity.Error, at, "it is not clear what is to be erased, expected either `--older-than` or `--record`");

    public static Message NoSuchRule(string found, IReadOnlyCollection<string> known) =>
        new(6054, Severity.Error, At("ledger"),
            $"no pack that the ledger keeps has a rule `{found}`, expected the id of one that has been in force")
        {
            Label = Spelling.Help(found, known),
        };

    public static Message AgainWithoutLedger(Location at) =>
        new(6055, Severity.Error, at, "`--again` is given without `--ledger`, expected the place where the reading was recorded")
        {
            Label = "what is not recorded is evaluated anew each time",
        };

    public static Message ErasureCode(Location at, string found) =>
        new(6056, Severity.Error, at, $"`{found}` is no code, expected at most 64 small letters, digits and hyphens, such as `requested`")
        {
            Label = "what an erasure says stays for ever, so it must not name anybody",
        };

    public static Message NoSuchRevision(string rule, string found, IReadOnlyCollection<string> known) =>
        new(6058, Severity.Error, At("ledger"),
            $"no pack that the ledger keeps has `{rule}` in the revision `{found}`, expected {Spelling.List(known)}")
        {
            Label = Spelling.Closest(found, known) is { } closest ? $"did you mean `{closest}`?" : null,
        };

    public static Message NoSuchPack(string found, IReadOnlyCollection<string> known) =>
        new(6057, Severity.Error, At("ledger"), $"the ledger keeps no pack `{found}`, expected {Spelling.List(known)}")
        {
            Label = Spelling.Closest(found, known) is { } closest ? $"did you mean `{closest}`?" : null,
        };

    private static Location At(string what) => new SourceText(what, "").Whole;
}
