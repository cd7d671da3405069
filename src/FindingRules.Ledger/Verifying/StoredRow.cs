using System.Data.Common;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Verifying;

/// <summary>A record as it lies in the store, before anything of it is believed.</summary>
internal sealed record StoredRow(
    long Position, byte[]? Id, object Kind, object Time, byte[]? Leaf, byte[]? Header, StoredBody? Body, bool HasBody)
{
    private const string Columns =
        "SELECT r.position, r.id, r.kind, r.time, r.leaf, r.header, b.position, b.salt, b.content, b.answer, b.terms "
        + "FROM record r LEFT JOIN body b ON b.position = r.position";

    public static Task<List<StoredRow>> ListAsync(DbConnection connection, long from, int most) => connection.ListAsync(
        Read, $"{Columns} WHERE r.position >= @from ORDER BY r.position LIMIT @most", ("@from", from), ("@most", (long)most));

    // A value of another type than was ever written is a change too.
    private static StoredRow Read(DbDataReader row)
    {
        var body = row.GetValue(7) is byte[] salt && row.GetValue(8) is byte[] content && row.GetValue(9) is byte[] answer
            && row.GetValue(10) is byte[] terms
            ? new StoredBody(salt, content, answer, terms)
            : null;
        return new StoredRow(
            row.GetInt64(0), row.GetValue(1) as byte[], row.GetValue(2), row.GetValue(3), row.GetValue(4) as byte[],
                row.GetValue(5) as byte[],
            body, !row.IsDBNull(6));
    }
}
