using System.Data.Common;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Indexing;

/// <summary>What the index takes from a record.</summary>
/// <param name="Content">Null where the body was erased before it was indexed.</param>
internal sealed record IndexedRecord(long Position, RecordHeader Header, byte[]? Content, byte[]? Terms)
{
    public const string Columns =
        "SELECT r.position, r.header, b.content, b.terms FROM record r LEFT JOIN body b ON b.position = r.position";

    /// <summary>Records from a position on, in order, at most so many.</summary>
    public static Task<List<IndexedRecord>> ListAsync(DbConnection connection, long from, int most) => connection.ListAsync(
        Read, $"{Columns} WHERE r.position >= @from ORDER BY r.position LIMIT @most", ("@from", from), ("@most", most));

    public static IndexedRecord Read(DbDataReader row) => Read(row, row.GetInt64(0));

    private static IndexedRecord Read(DbDataReader row, long record) => new(
        record, HeaderReader.Read(RowBytes.Of(row, 1, record), record),
        row.IsDBNull(2) ? null : RowBytes.Of(row, 2, record), row.IsDBNull(3) ? null : RowBytes.Of(row, 3, record));
}
