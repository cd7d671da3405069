using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR705x to FR707x: what is said of records, by the service and by the commands that look into a ledger.</summary>
public static class RecordMessages
{
    public static Message LedgerDoesNotWork(string code, LedgerLoss loss = LedgerLoss.NothingAsked) =>
        new(7050, Severity.Error, At("ledger"),
            $"the ledger cannot do its work at present ({code}), expected one that takes and gives records")
        {
            Label = loss switch
            {
                LedgerLoss.NothingRecorded => "nothing was recorded; send it again in a while",
                LedgerLoss.NotKnown =>
                    "whether it was recorded is not known: send it again with the same `Idempotency-Key`, or search for the study",
                _ => "ask again in a while; the log of the service says what is wrong",
            },
        };

    public static Message NoLedger() =>
        new(7051, Severity.Error, At("ledger"), "this service keeps no records, expected a ledger in its settings")
        {
            Label = "start it with `--ledger` and a place other than `none`",
        };

    public static Message NoSuchRecord(string id) =>
        new(7052, Severity.Error, At("ledger"), $"the ledger has no record `{id}`, expected the id of an answer that was recorded");

    public static Message AddressValue(string name, string found, string expected) =>
        new(7053, Severity.Error, At("request"), $"`{name}` is `{found}`, expected {expected}");

    public static Message RetryKeyTaken(string first) =>
        new(7054, Severity.Error, At("request"), "the `Idempotency-Key` was used for another request, expected a new key for each request")
        {
            Label = $"the first request with it made the record `{first}`; there is no reading of this one",
        };

    public static Message RetryKeyForm() =>
        new(7055, Severity.Error, At("request"),
            "the `Idempotency-Key` is not usable, expected one header of 1 to 255 printable ASCII characters");

    public static Message CannotRepeat(string id) =>
        new(7056, Severity.Error, At("ledger"), $"the record `{id}` was erased and can no longer be repeated, expected one with its body")
        {
            Label = "that it was there, and when, still shows: its proof holds as before",
        };

    public static Message NotAReading(string id) =>
        new(7057, Severity.Error, At("ledger"), $"the record `{id}` is not a reading, expected the id of one");

    public static Message PackNotLoaded(string pack, string version) =>
        new(7058, Severity.Error, At("ledger"),
            $"the kept texts of the pack `{pack}` {version} do not load, expected a pack as it was then")
        {
            Label = "use the version of this program that made the record",
        };

    public static Message NotReadAgain(string id) =>
        new(7059, Severity.Error, At("ledger"), $"the study of the record `{id}` cannot be read again, expected a study as it was then")
        {
            Label = "use the version of this program that made the record",
        };

    public static Message ParameterAlone(string name, string other) =>
        new(7060, Severity.Error, At("request"), $"the address says `{name}` without `{other}`, expected both or neither");

    public static Message NoKeyForBatch() =>
        new(7063, Severity.Error, At("request"), "a batch has an `Idempotency-Key`, expected none")
        {
            Label = "send studies that may have to be sent again one at a time, each with a key of its own",
        };

    public static Message FeedbackForm(string what, string expected) =>
        new(7061, Severity.Error, At("feedback"), $"{what}, expected {expected}");

    public static Message NoSuchSuggestion(string found, IReadOnlyCollection<string> known) =>
        new(7062, Severity.Error, At("feedback"), known.Count == 0
            ? $"the reading has no suggestion `{found}`, and no other"
            : $"the reading has no suggestion `{found}`, expected {Spelling.List(known)}")
        {
            Label = Spelling.Closest(found, known) is { } closest ? $"did you mean `{closest}`?" : null,
        };

    public static Message NoReasons(string pack) =>
        new(7064, Severity.Error, At("feedback"),
            $"the pack `{pack}` lists no `reasons`, expected some before a suggestion can be overridden")
        {
            Label = "the department lists them in the manifest of its pack",
        };

    public static Message FeedbackWrong(int mistakes) =>
        new(7065, Severity.Error, At("feedback"), mistakes == 1
            ? "one part of the feedback cannot be recorded, and `messages` says which"
            : $"{mistakes} parts of the feedback cannot be recorded, and `messages` says which");

    private static Location At(string what) => new SourceText(what, "").Whole;
}

/// <summary>What became of a request that the ledger could not serve.</summary>
public enum LedgerLoss
{
    /// <summary>It was a question.</summary>
    NothingAsked,

    NothingRecorded,

    /// <summary>The failure came when it was being written: it is there whole or not at all.</summary>
    NotKnown,
}
