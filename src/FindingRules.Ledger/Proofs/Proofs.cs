using System.Collections.Immutable;
using FindingRules.Ledger.Merkle;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Signing;
using FindingRules.Model.Messages;

namespace FindingRules.Ledger.Proofs;

/// <summary>A proof, or why there is none.</summary>
public sealed record ProofAnswer<T>(T? Proof, Message? Refusal)
    where T : class;

/// <summary>Shows that a record is in the tree of a signed head. Source: RFC 9162, section 2.1.3.</summary>
/// <param name="Header">The bytes whose leaf hash is proven; they carry the commitment to the body.</param>
/// <param name="Path">Hashes from the leaf up.</param>
public sealed record InclusionProof(
    Guid Record, long Index, ReadOnlyMemory<byte> Header, ImmutableArray<ReadOnlyMemory<byte>> Path, SignedTreeHead Head)
{
    /// <summary>What the header commits to; null where it was erased.</summary>
    public RecordBody? Body { get; init; }

    /// <summary>Whether the path leads from the header to the head's root. The signature is checked apart.</summary>
    public bool Holds() => Index >= 0 && ProofVerifier.IsIncluded(
        (ulong)Index, (ulong)Head.Size, TreeHash.Leaf(Header.Span), [.. Path.Select(h => h.ToArray())], Convert.FromHexString(Head.Root));
}

/// <summary>Shows that an earlier tree is the beginning of a later one. Source: RFC 9162, section 2.1.4.</summary>
/// <param name="From">The number of records of the earlier tree.</param>
public sealed record ConsistencyProof(long From, ImmutableArray<ReadOnlyMemory<byte>> Path, SignedTreeHead Head)
{
    /// <param name="earlier">Of the tree of <see cref="From"/> records.</param>
    public bool Holds(SignedTreeHead earlier) =>
        earlier.Size == From && earlier.Ledger == Head.Ledger && (From == 0 || ProofVerifier.IsConsistent(
        (ulong)From, (ulong)Head.Size, Convert.FromHexString(earlier.Root), Convert.FromHexString(Head.Root),
            [.. Path.Select(h => h.ToArray())]));
}
