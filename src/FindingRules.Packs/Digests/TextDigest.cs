using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using FindingRules.Model.Packs;

namespace FindingRules.Packs.Digests;

/// <summary>
/// SHA-256 of the files as they lie in the folder: by path in ordinal order, the path and the bytes, each with its
/// length before it (eight bytes, most significant first).
/// </summary>
internal static class TextDigest
{
    public static string Of(ImmutableArray<PackFile> files)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var file in files.OrderBy(f => f.Path, StringComparer.Ordinal))
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
