using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Ledger.Failures;

/// <summary>Makes a failure and its message together, so that the two cannot disagree.</summary>
internal static class Fail
{
    public static LedgerException Full(string ledger, Exception? inner = null) =>
        new(LedgerFailure.Full, LedgerMessages.Full(ledger), inner);

    public static LedgerException ReadOnly(string ledger, Exception? inner = null) =>
        new(LedgerFailure.ReadOnly, LedgerMessages.ReadOnly(ledger), inner);

    public static LedgerException Locked(string ledger, TimeSpan waited, Exception? inner = null) =>
        new(LedgerFailure.Locked, LedgerMessages.Locked(ledger, (int)waited.TotalMilliseconds), inner);

    public static LedgerException Missing(string ledger, string why, Exception? inner = null) =>
        new(LedgerFailure.Missing, LedgerMessages.Missing(ledger, why), inner);

    public static LedgerException Unreachable(string ledger, string why, Exception? inner = null) =>
        new(LedgerFailure.Unreachable, LedgerMessages.Unreachable(ledger, why), inner);

    public static LedgerException Refused(string ledger, string why, Exception? inner = null) =>
        new(LedgerFailure.Refused, LedgerMessages.ServerRefuses(ledger, why), inner);

    public static LedgerException NotALedger(string ledger, Exception? inner = null) =>
        new(LedgerFailure.NotALedger, LedgerMessages.NotALedger(ledger), inner);

    public static LedgerException NewerSchema(string ledger, int found, int known) =>
        new(LedgerFailure.NewerSchema, LedgerMessages.NewerSchema(ledger, found, known));

    public static LedgerException Damaged(string ledger, string what, Exception? inner = null) =>
        new(LedgerFailure.Damaged, LedgerMessages.Damaged(ledger, what), inner);

    public static LedgerException WrongKey(string ledger, string found, string expected) =>
        new(LedgerFailure.WrongKey, LedgerMessages.WrongKey(ledger, found, expected));

    public static LedgerException KeyExposed(string path, UnixFileMode mode) =>
        new(LedgerFailure.UnusableKey, LedgerMessages.KeyExposed(path, Convert.ToString((int)mode, 8).PadLeft(4, '0')));

    public static LedgerException KeyUnusable(string path, string why, Exception? inner = null) =>
        new(LedgerFailure.UnusableKey, LedgerMessages.KeyUnusable(path, why), inner);

    public static LedgerException Behind(string ledger, long missing) =>
        new(LedgerFailure.Behind, LedgerMessages.IndexBehind(ledger, missing));

    public static LedgerException Closing(string ledger) => new(LedgerFailure.Closing, LedgerMessages.Closing(ledger));

    public static LedgerException PackMissing(string pack, string digest) =>
        new(LedgerFailure.PackMissing, LedgerMessages.PackMissing(pack, digest));

    public static LedgerException Device(string ledger, string why, Exception? inner = null) =>
        new(LedgerFailure.Device, LedgerMessages.Device(ledger, why), inner);
}
