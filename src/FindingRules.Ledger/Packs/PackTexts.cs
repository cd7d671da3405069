using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using FindingRules.Ledger.Records;

namespace FindingRules.Ledger.Packs;

/// <summary>The files of a pack, exactly as they were.</summary>
public sealed record PackTexts(PackReference Pack, ImmutableArray<PackText> Files)
{
    /// <summary>
    /// SHA-256 by path in ordinal order of path and bytes, each with its length before it (eight bytes, most significant first): the text
    /// digest of the pack, if these are its files.
    /// </summary>
    public string ComputeDigest()
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var file in Files.OrderBy(f => f.Path, StringComparer.Ordinal))
        {
            Append(hash, Encoding.UTF8.GetBytes(file.Path));
            Append(hash, file.Bytes.Span);
        }
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    private static void Append(IncrementalHash hash, ReadOnlySpan<byte> bytes)
    {
        Span<byte> length = stackalloc byte[8];
        BinaryPrimitives.WriteInt64BigEndian(length, bytes.Length);
        hash.AppendData(length);
        hash.AppendData(bytes);
    }
}

/// <param name="Path">Within the pack, with forward slashes.</param>
public sealed record PackText(string Path, ReadOnlyMemory<byte> Bytes);

/// <summary>A pack that the ledger keeps.</summary>
public sealed record StoredPack(PackReference Pack, DateTimeOffset Stored);
