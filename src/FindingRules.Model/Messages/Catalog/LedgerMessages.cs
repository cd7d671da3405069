using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR600x to FR601x: why the ledger cannot work where it is.</summary>
public static class LedgerMessages
{
    private const string NothingLost = "nothing was recorded, and everything recorded before is there";

    public static Message Full(string ledger) =>
        new(6001, Severity.Error, At(ledger), $"the ledger `{ledger}` has no room for more")
        {
            Label = $"make room on its disk; {NothingLost}, and it goes on by itself",
        };

    public static Message ReadOnly(string ledger) =>
        new(6002, Severity.Error, At(ledger), $"the ledger `{ledger}` may not be written")
        {
            Label = "give the user that runs this the right to write the file and its folder; a server must not be one that only reads",
        };

    public static Message Locked(string ledger, int milliseconds) =>
        new(6003, Severity.Error, At(ledger), $"the ledger `{ledger}` was held by another process for more than {milliseconds} ms")
        {
            Label = $"find out which process writes to it and let it finish; {NothingLost}",
        };

    public static Message Missing(string ledger, string why) =>
        new(6004, Severity.Error, At(ledger), $"the ledger `{ledger}` cannot be opened: {why}")
        {
            Label = "check the path, and that its folder is there",
        };

    public static Message Unreachable(string ledger, string why) =>
        new(6005, Severity.Error, At(ledger), $"the database server of the ledger `{ledger}` does not answer: {why}")
        {
            Label = "check that the server runs and can be reached; a record under way is whole in the ledger or not at all",
        };

    public static Message ServerRefuses(string ledger, string why) =>
        new(6006, Severity.Error, At(ledger), $"the database server of the ledger `{ledger}` refuses: {why}")
        {
            Label = "check user, password, database and rights in the connection string",
        };

    public static Message NotALedger(string ledger) =>
        new(6007, Severity.Error, At(ledger), $"`{ledger}` is not a ledger, expected one that this program began")
        {
            Label = "name another place, a new ledger is begun where there is none",
        };

    public static Message NewerSchema(string ledger, int found, int known) =>
        new(
            6008, Severity.Error, At(ledger),
            $"the ledger `{ledger}` has the form {found} of a newer version, and this version knows forms up to {known}")
        {
            Label = "use the newer version; a ledger is never taken back to an older form",
        };

    public static Message Damaged(string ledger, string what) =>
        new(6009, Severity.Error, At(ledger), $"the ledger `{ledger}` cannot be read whole: {what}")
        {
            Label = "keep a copy of it as it is, and compare it with a backup by `findingrules ledger verify`",
        };

    public static Message WrongKey(string ledger, string found, string expected) =>
        new(
            6010, Severity.Error, At(ledger),
            $"the signing key is {Short(found)}, and the ledger `{ledger}` was begun with {Short(expected)}")
        {
            Label = "name the key file that the ledger was begun with; all services of a ledger share one",
        };

    public static Message KeyExposed(string path, string mode) =>
        new(6011, Severity.Error, At(path), $"the signing key `{path}` has the mode {mode}, so that others can read it, expected 0600")
        {
            Label = $"`chmod 600 {path}`; if others may have read it, its signatures prove nothing any more",
        };

    public static Message KeyUnusable(string path, string why) =>
        new(6012, Severity.Error, At(path), path.Length == 0 ? why : $"the signing key `{path}` cannot be used: {why}")
        {
            Label = path.Length == 0
                ? "name a file by `--ledger-key`; the key is made in it when the ledger is begun"
                : "expected a file that holds an elliptic curve key P-256 in PEM, as made when the ledger was begun",
        };

    public static Message IndexBehind(string ledger, long missing) =>
        new(6013, Severity.Error, At(ledger), $"the index of the ledger `{ledger}` has not yet taken in {missing} records")
        {
            Label = "ask again in a few seconds; it catches up by itself",
        };

    public static Message Closing(string ledger) =>
        new(6014, Severity.Error, At(ledger), $"the ledger `{ledger}` is being closed")
        {
            Label = "send it again when the service is back; it was not recorded",
        };

    public static Message PackMissing(string pack, string digest) =>
        new(6015, Severity.Error, At(pack), $"the texts of the pack `{pack}` with the text digest {Short(digest)} are not in the ledger")
        {
            Label = "store the pack before the first reading with it, otherwise the reading could not be repeated",
        };

    public static Message Device(string ledger, string why) =>
        new(6016, Severity.Error, At(ledger), $"the ledger `{ledger}` could not do its work: {why}")
        {
            Label = "a record under way is whole in the ledger or not at all",
        };

    public static Message LocationUnclear(string found) =>
        new(6017, Severity.Error, At("ledger"),
            $"`{found}` is no place for a ledger, expected the path of a file or `postgresql:` and a connection string")
        {
            Label = "such as `ledger.db` or `postgresql:Host=db;Database=findingrules;Username=service`",
        };

    internal static string Short(string digest) => $"`{(digest.Length > 16 ? digest[..16] : digest)}`";

    private static Location At(string ledger) => new SourceText(ledger, "").Whole;
}
