using System.Buffers.Binary;
using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace FindingRules.Ledger.Searching;

/// <summary>Where a page ended, and a mark of the question that it belongs to.</summary>
internal static class Cursor
{
    private const int MarkSize = 8;

    public static string Write(long before, LedgerQuery query)
    {
        Span<byte> bytes = stackalloc byte[sizeof(long) + MarkSize];
        BinaryPrimitives.WriteInt64BigEndian(bytes, before);
        Mark(query).CopyTo(bytes[sizeof(long)..]);
        return Base64Url.EncodeToString(bytes);
    }

    /// <summary>Null where it is no cursor, or one of another question.</summary>
    public static long? Read(string cursor, LedgerQuery query)
    {
        Span<byte> bytes = stackalloc byte[sizeof(long) + MarkSize];
        var isWhole = Base64Url.IsValid(cursor, out var length) && length == bytes.Length
            && Base64Url.TryDecodeFromChars(cursor, bytes, out _);
        return isWhole && bytes[sizeof(long)..].SequenceEqual(Mark(query)) ? BinaryPrimitives.ReadInt64BigEndian(bytes) : null;
    }

    // The size of the page may change on the way.
    private static ReadOnlySpan<byte> Mark(LedgerQuery query) =>
        SHA256.HashData(Encoding.UTF8.GetBytes((query with { Cursor = null, Limit = 0 }).ToString())).AsSpan(0, MarkSize);
}
