using System.Security.Cryptography;

namespace FindingRules.Ledger.Merkle;

/// <summary>SHA-256 of leaves and of inner nodes, kept apart by their first byte. Source: RFC 9162, section 2.1.1.</summary>
public static class TreeHash
{
    public const int Size = SHA256.HashSizeInBytes;

    /// <summary>The root of a tree without leaves: the hash of nothing.</summary>
    public static ReadOnlyMemory<byte> Empty { get; } = SHA256.HashData([]);

    public static byte[] Leaf(ReadOnlySpan<byte> entry)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData([0x00]);
        hash.AppendData(entry);
        return hash.GetHashAndReset();
    }

    public static byte[] Node(ReadOnlySpan<byte> left, ReadOnlySpan<byte> right)
    {
        Span<byte> both = stackalloc byte[1 + (2 * Size)];
        both[0] = 0x01;
        left.CopyTo(both[1..]);
        right.CopyTo(both[(1 + Size)..]);
        return SHA256.HashData(both);
    }
}
