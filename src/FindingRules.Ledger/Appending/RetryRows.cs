using System.Data.Common;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Appending;

/// <summary>What is kept of keys that were sent with requests.</summary>
internal static class RetryRows
{
    /// <summary>None or one.</summary>
    public static Task<List<(byte[] Request, long Position)>> FindAsync(DbConnection connection, byte[] key) => connection.ListAsync(
        r => (r.GetFieldValue<byte[]>(0), r.GetInt64(1)), "SELECT request, position FROM retry WHERE key = @key", ("@key", key));
}
