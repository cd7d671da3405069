using System.Data.Common;
using FindingRules.Ledger.Appending;
using FindingRules.Ledger.Feedback;
using FindingRules.Ledger.Indexing;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Erasing;

/// <summary>
/// Removes bodies, and everything made from them that could tell what they held, and records that it did: in one transaction, so that a
/// body is never gone without a record of it.
/// </summary>
internal sealed class Eraser(ILedgerDatabase database, TimeProvider time)
{
    private const int StepRecords = 500;
    private readonly HashSet<long> _unreadable = [];

    // What feedback says is counted under its reading, and goes with it.
    private static readonly RecordKind[] Erasable = [RecordKind.Reading, RecordKind.Shadow];

    /// <summary>Erases up to so many of those older than a moment; null where there are none left.</summary>
    public Task<ErasedStep?> EraseBeforeAsync(ErasureRequest request, DateTimeOffset before) =>
        database.WriteAsync(WriteKind.Record, async connection =>
    {
        // First of all: of two services that erase at once, the second must see what the first has erased.
        await database.LockTreeAsync(connection);
        var indexed = await database.LockIndexAsync(connection);
        var positions = await connection.ListAsync(
            r => r.GetInt64(0),
            "SELECT b.position FROM body b JOIN record r ON r.position = b.position WHERE r.time < @before AND r.kind IN (1, 2, 3) "
            + "AND b.position < @indexed ORDER BY b.position LIMIT @most",
            ("@before", before.ToUnixTimeMilliseconds()), ("@indexed", indexed), ("@most", (long)StepRecords));
        return await EraseAsync(connection, positions, request);
    });

    /// <summary>Erases those named, as far as they are there, may be erased and are not erased yet.</summary>
    public Task<ErasedStep?> EraseAsync(ErasureRequest request, IEnumerable<Guid> records) =>
        database.WriteAsync(WriteKind.Record, async connection =>
    {
        // First of all: of two services that erase at once, the second must see what the first has erased.
        await database.LockTreeAsync(connection);
        var indexed = await database.LockIndexAsync(connection);
        var positions = (await PositionsAsync(connection, records)).Where(p => p < indexed);
        return await EraseAsync(connection, positions, request);
    });

    /// <summary>How many bodies erasing the named records would take.</summary>
    public async Task<long> CountAsync(DbConnection connection, IEnumerable<Guid> records)
    {
        var taken = new SortedDictionary<long, IndexedRecord>();
        foreach (var position in await PositionsAsync(connection, records)) await TakeAsync(connection, position, taken);
        return taken.Count;
    }

    private static async Task<SortedSet<long>> PositionsAsync(DbConnection connection, IEnumerable<Guid> records)
    {
        var positions = new SortedSet<long>();
        foreach (var id in records)
            if (await RecordRows.FindAsync(connection, id) is { IsErased: false } record && Erasable.Contains(record.Kind))
                positions.Add(record.Index);
        return positions;
    }

    private async Task<ErasedStep?> EraseAsync(DbConnection connection, IEnumerable<long> positions, ErasureRequest request)
    {
        var erased = new SortedDictionary<long, IndexedRecord>();
        foreach (var position in positions) await TakeAsync(connection, position, erased);
        if (erased.Count == 0) return null;
        var words = new List<Occurrence>();
        foreach (var record in erased.Values) await RemoveAsync(connection, record, words);
        await Postings.RemoveAsync(database, connection, words);
        var content = ErasureJson.Write(request.Reason, PositionRange.Of(erased.Keys));
        var head = new RecordHead(RecordKind.Erasure, request.Actor);
        var entry = NewRecord.Of(head, content, [], IndexTerms.None, time.GetUtcNow(), null);
        await AppendTransaction.RunAsync(database, connection, [entry]);
        return new ErasedStep(entry.Header.Id, erased.Count);
    }

    /// <summary>How many records could not be read.</summary>
    public int Unreadable => _unreadable.Count;

    // Feedback names what was suggested, so it goes with its reading.
    private async Task TakeAsync(DbConnection connection, long position, SortedDictionary<long, IndexedRecord> to)
    {
        if (to.ContainsKey(position)) return;
        if (await ReadAsync(connection, position) is not { Content: not null } record) return;
        to.Add(position, record);
        if (record.Header.Kind != RecordKind.Reading) return;
        await foreach (var (chunk, places) in PostingReader.ReadAsync(
            connection, [Word.About(RecordKind.Feedback, record.Header.Id)], position, long.MaxValue))
            foreach (var place in places.Descending(Places.Span)) await TakeAsync(connection, Places.FirstOf(chunk) + place, to);
    }

    // One that is damaged must not keep all others from being erased.
    private async Task<IndexedRecord?> ReadAsync(DbConnection connection, long position)
    {
        try
        {
            var record = (await connection.ListAsync(
                IndexedRecord.Read, $"{IndexedRecord.Columns} WHERE r.position = @position", ("@position", position))).Single();
            if (record.Terms is not null) TermsJson.Read(record.Terms);
            return record;
        }
        catch (InvalidDataException)
        {
            _unreadable.Add(position);
            return null;
        }
    }

    private static async Task RemoveAsync(DbConnection connection, IndexedRecord record, List<Occurrence> gone)
    {
        var position = ("@position", (object?)record.Position);
        var verdicts = await FeedbackIndexing.ReadVerdictsAsync(connection, record.Position, new IndexRows());
        var words = TermIndexing.ErasableWords(record.Header, TermsJson.Read(record.Terms))
            .Concat(FeedbackIndexing.WordsOf(verdicts.Values));
        gone.AddRange(words.Select(w => new Occurrence(w, record.Position)));
        await connection.ExecuteAsync("DELETE FROM verdict WHERE reading = @position", position);
        await connection.ExecuteAsync("DELETE FROM retry WHERE position = @position", position);
        await connection.ExecuteAsync("DELETE FROM body WHERE position = @position", position);
    }
}

internal sealed record ErasedStep(Guid Record, int Count);
