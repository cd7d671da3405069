namespace FindingRules.Ledger.Failures;

/// <summary>Why the ledger could not do its work, for a caller who answers differently to each.</summary>
public enum LedgerFailure
{
    /// <summary>There is no room for more; nothing was recorded, and what was recorded before is there.</summary>
    Full,

    /// <summary>The file or its folder may not be written.</summary>
    ReadOnly,

    /// <summary>Another process holds it, and did not let go in time.</summary>
    Locked,

    /// <summary>There is no such file, folder or database.</summary>
    Missing,

    /// <summary>The database server does not answer.</summary>
    Unreachable,

    /// <summary>The database server refuses: wrong user, password or right.</summary>
    Refused,

    /// <summary>What is there is not a ledger.</summary>
    NotALedger,

    /// <summary>It was written by a newer version of this program.</summary>
    NewerSchema,

    /// <summary>The stored bytes contradict themselves.</summary>
    Damaged,

    /// <summary>The signing key is not the one that the ledger was begun with.</summary>
    WrongKey,

    /// <summary>The signing key cannot be read, or may be read by others.</summary>
    UnusableKey,

    /// <summary>The index did not catch up in time; ask again.</summary>
    Behind,

    /// <summary>The ledger is being closed.</summary>
    Closing,

    /// <summary>A reading speaks of a pack whose texts are not in the store.</summary>
    PackMissing,

    /// <summary>The device or the server reported something else.</summary>
    Device,
}
