using System.Data.Common;
using System.Runtime.CompilerServices;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Records;

/// <summary>Reads records with their bodies.</summary>
internal static class RecordRows
{
    public const string Columns =
        "SELECT r.position, r.header, b.content, b.answer, b.terms FROM record r LEFT JOIN body b ON b.position = r.position";

    public static async Task<LedgerRecord?> FindAsync(DbConnection connection, Guid id) => (await connection.ListAsync(
        Read, $"{Columns} WHERE r.id = @id", ("@id", id.ToByteArray(bigEndian: true)))).SingleOrDefault();

    public static async Task<LedgerRecord> AtAsync(DbConnection connection, long position) => (await connection.ListAsync(
        Read, $"{Columns} WHERE r.position = @position", ("@position", position))).Single();

    /// <summary>Records from a position on, in order, at most so many.</summary>
    public static Task<List<LedgerRecord>> ListAsync(DbConnection connection, long from, long before, int most) => connection.ListAsync(
        Read, $"{Columns} WHERE r.position >= @from AND r.position < @before ORDER BY r.position LIMIT @most",
        ("@from", from), ("@before", before), ("@most", most));

    /// <summary>All records that are there now, in order, a few at a time.</summary>
    public static async IAsyncEnumerable<LedgerRecord> ExportAsync(
        ILedgerDatabase database, long from, [EnumeratorCancellation] CancellationToken cancellation)
    {
        const int pageRecords = 200;
        var size = await database.ReadAsync(SizeAsync, cancellation);
        while (from < size)
        {
            var start = from;
            var page = await database.ReadAsync(c => ListAsync(c, start, size, pageRecords), cancellation);
            foreach (var record in page) yield return record;
            from += pageRecords;
        }
    }

    /// <summary>How many records there are.</summary>
    public static Task<long> SizeAsync(DbConnection connection) => connection.ScalarAsync<long>("SELECT size FROM tree");

    public static LedgerRecord Read(DbDataReader row)
    {
        var bytes = row.GetFieldValue<byte[]>(1);
        var header = HeaderReader.Read(bytes);
        return new LedgerRecord
        {
            Index = row.GetInt64(0),
            Id = header.Id,
            Time = header.Time,
            Kind = header.Kind,
            Pack = header.Pack,
            Engine = header.Engine,
            Actor = header.Actor,
            Correlation = header.Correlation,
            About = header.About,
            Header = bytes,
            Body = row.IsDBNull(2) ? null : new RecordBody(
                row.GetFieldValue<byte[]>(2), row.GetFieldValue<byte[]>(3), TermsJson.Read(row.GetFieldValue<byte[]>(4))),
        };
    }
}
