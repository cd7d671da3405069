namespace FindingRules.Ledger;

/// <summary>How a ledger is opened.</summary>
public sealed record LedgerOptions
{
    /// <summary>
    /// The file of the signing key; made when the ledger is begun. Left out, it lies beside the ledger's own file with <c>.key</c>
    /// after its name. A ledger on a server needs one.
    /// </summary>
    public string? KeyFile { get; init; }

    /// <summary>Whether a ledger is begun where there is none; otherwise that is a failure.</summary>
    public bool BeginsWhereNone { get; init; } = true;

    /// <summary>How long an append waits for another process that holds the ledger.</summary>
    public TimeSpan LockWait { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>How long a question waits for the index to take in what was recorded before it was asked.</summary>
    public TimeSpan IndexWait { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>The most records that one transaction takes.</summary>
    public int BatchRecords { get; init; } = 256;

    /// <summary>The most appends that wait; more must wait before they may wait.</summary>
    public int WaitingAppends { get; init; } = 4096;

    public TimeProvider Time { get; init; } = TimeProvider.System;

    /// <summary>Of a file, the most pages that it may grow to; 0 for no bound but the disk's.</summary>
    internal long MostPages { get; init; }
}
