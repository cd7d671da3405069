using System.Data.Common;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Appending;

/// <summary>What is kept of keys that were sent with requests.</summary>
internal static class RetryRows
{
    public const int MostAtOnce = 256;

    /// <summary>Those of the keys that were used.</summary>
    public static Task<List<(byte[] Key, byte[] Request, long Position)>> ListAsync(DbConnection connection, byte[][] keys) =>
        connection.ListAsync(
            r => (r.GetFieldValue<byte[]>(0), r.GetFieldValue<byte[]>(1), r.GetInt64(2)),
            $"SELECT key, request, position FROM retry WHERE key IN ({string.Join(',', keys.Select((_, i) => $"@k{i}"))})",
            [.. keys.Select((key, i) => ($"@k{i}", (object?)key))]);

    /// <summary>None or one.</summary>
    public static Task<List<(byte[] Request, long Position)>> FindAsync(DbConnection connection, byte[] key) => connection.ListAsync(
        r => (r.GetFieldValue<byte[]>(0), r.GetInt64(1)), "SELECT request, position FROM retry WHERE key = @key", ("@key", key));
}
