using System.Data.Common;
using System.Runtime.CompilerServices;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Records;

/// <summary>Reads records with their bodies.</summary>
internal static class RecordRows
{
    public const string Columns =
        "SELECT r.position, r.header, b.content, b.answer, b.terms, b.salt FROM record r LEFT JOIN body b ON b.position = r.position";

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
            foreach (var record in page)
            {
                // A line that is left out would not be missed by who reads them.
                if (record.Index != from) throw Fail.Damaged(database.Name, $"record {from} is missing");
                yield return record;
                from++;
            }
            if (page.Count == 0) throw Fail.Damaged(database.Name, $"record {from} is missing");
        }
    }

    /// <summary>How many records there are.</summary>
    public static Task<long> SizeAsync(DbConnection connection) => connection.ScalarAsync<long>("SELECT size FROM tree");

    /// <exception cref="InvalidDataException">It is not as it was written: nobody is shown a body that was changed.</exception>
    public static LedgerRecord Read(DbDataReader row)
    {
        var index = row.GetInt64(0);
        var bytes = RowBytes.Of(row, 1, index);
        var header = HeaderReader.Read(bytes, index);
        return new LedgerRecord
        {
            Index = index,
            Id = header.Id,
            Time = header.Time,
            Kind = header.Kind,
            Pack = header.Pack,
            Engine = header.Engine,
            Actor = header.Actor,
            Correlation = header.Correlation,
            About = header.About,
            Header = bytes,
            Body = row.IsDBNull(2) ? null : ReadBody(row, index, header),
        };
    }

    private static RecordBody ReadBody(DbDataReader row, long index, RecordHeader header)
    {
        var stored = new StoredBody(
            RowBytes.Of(row, 5, index), RowBytes.Of(row, 2, index), RowBytes.Of(row, 3, index), RowBytes.Of(row, 4, index));
        if (!Commitment.Of(stored).AsSpan().SequenceEqual(header.Commitment))
            throw new InvalidDataException($"the body of record {index} is not the one that its header commits to");
        return new RecordBody(stored.Content, stored.Answer, TermsJson.Read(stored.Terms))
        {
            Salt = stored.Salt,
            TermsJson = stored.Terms,
        };
    }
}
