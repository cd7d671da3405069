using System.Data.Common;
using FindingRules.Ledger.Indexing;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Searching;

/// <summary>Readings that say that they replace another.</summary>
internal static class Superseding
{
    private const int Most = 100;

    /// <summary>The earliest first.</summary>
    public static async Task<List<Guid>> FindAsync(
        ILedgerDatabase database, DbConnection connection, RecordKind kind, string study, long after)
    {
        var (size, indexed) = await Unindexed.ReachAsync(database, connection);
        var positions = new List<long>();
        await foreach (var (chunk, places) in PostingReader.ReadAsync(connection, [Word.Supersedes(kind, study)], after + 1, indexed))
            positions.AddRange(places.Descending(Places.Span).Select(p => Places.FirstOf(chunk) + p));
        var found = new List<Guid>();
        foreach (var position in positions.Order().Where(p => p > after).Take(Most))
            found.Add((await RecordRows.AtAsync(connection, position)).Id);
        var rest = new List<LedgerRecord>();
        var query = new LedgerQuery { Kind = kind, Supersedes = study };
        await Unindexed.FindAsync(connection, query, Math.Max(indexed, after + 1), size, Most, rest);
        return [.. found, .. rest.AsEnumerable().Reverse().Select(r => r.Id)];
    }
}
