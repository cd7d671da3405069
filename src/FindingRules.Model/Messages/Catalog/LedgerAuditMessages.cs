using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR602x and FR603x: what the verification of a ledger found. Records are numbered from 0, as proofs number them.</summary>
public static class LedgerAuditMessages
{
    public static Message HeaderChanged(string ledger, long record) =>
        new(6020, Severity.Error, At(ledger), $"record {record} was changed: it does not have the hash that was stored with it");

    public static Message RecordsMissing(string ledger, long first, long last) =>
        new(6021, Severity.Error, At(ledger), $"{Records(first, last)} missing");

    public static Message BodyChanged(string ledger, long record) =>
        new(6022, Severity.Error, At(ledger), $"the body of record {record} was changed: it is not the one that its header commits to");

    public static Message BodyGone(string ledger, long first, long last) =>
        new(6023, Severity.Error, At(ledger), first == last
            ? $"the body of record {first} is gone, and no erasure speaks of it"
            : $"the bodies of records {first} to {last} are gone, and no erasure speaks of them");

    public static Message RootDiffers(string ledger, long size) =>
        new(6024, Severity.Error, At(ledger), $"the first {size} records are not those that the tree head was signed for")
        {
            Label = "records were changed, removed, added or put in another order since then",
        };

    public static Message HeadNotSigned(string ledger) =>
        new(6025, Severity.Error, At(ledger), "the signature of the tree head does not hold, so that it vouches for nothing");

    public static Message HeadOfAnother(string ledger) =>
        new(6026, Severity.Error, At(ledger), "the tree head speaks of another ledger or was signed with another key")
        {
            Label = "name the tree head that was kept of this ledger; if it is that one, the ledger was replaced",
        };

    public static Message CutOff(string ledger, long records, long size) =>
        new(6027, Severity.Error, At(ledger), $"there are {records} records, and the tree head was signed for {size}")
        {
            Label = "the last ones were cut off, or this is an older copy",
        };

    public static Message PackChanged(string ledger, string digest) =>
        new(6028, Severity.Error, At(ledger), $"the texts of the pack `{digest}` were changed: they do not have that digest");

    public static Message PackGone(string ledger, string digest, long record) =>
        new(6029, Severity.Error, At(ledger), $"the texts of the pack `{digest}` are gone, and record {record} rests on them");

    public static Message TreeDiffers(string ledger) =>
        new(6030, Severity.Error, At(ledger), "the stored tree does not fit the records, so that proofs made from it would not hold")
        {
            Label = "if nothing else was found, the records are whole and only hashes between them were changed",
        };

    public static Message ListedOtherwise(string ledger, long record) =>
        new(6031, Severity.Error, At(ledger), $"record {record} is listed under another id, time or kind than its header says");

    public static Message ErasedIsBack(string ledger, long record) =>
        new(6032, Severity.Error, At(ledger), $"record {record} was erased and has a body again")
        {
            Label = "a backup from before the erasure was put back: erase again",
        };

    public static Message ErasureUnclear(string ledger, long record) =>
        new(6033, Severity.Error, At(ledger), $"the erasure in record {record} does not say which records before it were erased");

    public static Message NotReadable(string ledger, long record) =>
        new(6034, Severity.Error, At(ledger), $"record {record} cannot be read: it is not in the form in which records are written");

    public static Message KeyOfAnother(string ledger, string found, string expected) =>
        new(6035, Severity.Error, At(ledger),
            $"the ledger was begun with the key {LedgerMessages.Short(found)}, expected {LedgerMessages.Short(expected)}")
        {
            Label = "name the public key that was kept of this ledger; if it is that one, the ledger was replaced",
        };

    private static string Records(long first, long last) => first == last ? $"record {first} is" : $"the records {first} to {last} are";

    private static Location At(string ledger) => new SourceText(ledger, "").Whole;
}
