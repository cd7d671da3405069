using System.Buffers.Binary;
using System.Security.Cryptography;

namespace FindingRules.Ledger.Records;

/// <summary>
/// Binds a header to a body without telling anything of it: SHA-256 of 32 random bytes, then content, answer and
/// index terms, each with its
/// length before it (eight bytes, most significant first). Without the random bytes nobody can try out guesses of an erased body.
/// </summary>
internal static class Commitment
{
    public const int SaltSize = 32;

    public static byte[] Of(StoredBody body)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(body.Salt);
        Append(hash, body.Content);
        Append(hash, body.Answer);
        Append(hash, body.Terms);
        return hash.GetHashAndReset();
    }

    private static void Append(IncrementalHash hash, byte[] part)
    {
        Span<byte> length = stackalloc byte[8];
        BinaryPrimitives.WriteInt64BigEndian(length, part.Length);
        hash.AppendData(length);
        hash.AppendData(part);
    }
}

/// <summary>The body as it lies in the store.</summary>
internal sealed record StoredBody(byte[] Salt, byte[] Content, byte[] Answer, byte[] Terms);
