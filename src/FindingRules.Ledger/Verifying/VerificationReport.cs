using System.Collections.Immutable;
using FindingRules.Ledger.Signing;
using FindingRules.Model.Messages;

namespace FindingRules.Ledger.Verifying;

/// <summary>What a verification found. Without a tree head it shows only that the store agrees with itself.</summary>
public sealed record VerificationReport
{
    /// <summary>How many records there are.</summary>
    public required long Records { get; init; }

    /// <summary>How many of them the tree head vouches for; nothing vouches for those after them.</summary>
    public required long Covered { get; init; }

    /// <summary>How many have lost their bodies by an erasure that is itself a record.</summary>
    public required long Erased { get; init; }

    /// <summary>
    /// How many of those are covered by the tree head while the record of their erasure is not: whoever can write the store could have
    /// made that record. A later head that covers the erasure vouches for it.
    /// </summary>
    public required long ErasedAfterHead { get; init; }

    /// <summary>The root of all records, in hexadecimal digits.</summary>
    public required string Root { get; init; }

    public SignedTreeHead? Head { get; init; }

    /// <summary>The first hundred.</summary>
    public required ImmutableArray<Message> Problems { get; init; }

    public required long ProblemCount { get; init; }

    public bool IsSound => ProblemCount == 0;
}

/// <summary>How far a verification or an export has come.</summary>
public readonly record struct LedgerProgress(long Done, long All);
