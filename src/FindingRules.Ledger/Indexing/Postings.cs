using System.Data.Common;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Indexing;

/// <summary>Puts words of records into the rows of the index, and takes them out.</summary>
internal static class Postings
{
    /// <summary>Adds what a step found in new records and what feedback changed.</summary>
    public static async Task AddAsync(ILedgerDatabase database, DbConnection connection, IndexRows step)
    {
        var rows = new SortedDictionary<PostingKey, byte[]>();
        // What stands before the step in its 1024 is there already; what follows is not.
        var begun = step.Words.Keys.Where(k => Places.FirstOf(k.Chunk) < step.From);
        var known = await database.FindPostingsAsync(connection, [.. begun.Union(step.Changes.Keys.Select(PostingKey.Of))]);
        foreach (var (key, added) in step.Words) rows[key] = Added(known.GetValueOrDefault(key), added);
        foreach (var (occurrence, isThere) in step.Changes) Change(rows, known, occurrence, isThere);
        await database.WritePostingsAsync(connection, rows);
    }

    /// <summary>Takes words out of all these records.</summary>
    public static async Task RemoveAsync(ILedgerDatabase database, DbConnection connection, IReadOnlyCollection<Occurrence> gone)
    {
        var rows = new SortedDictionary<PostingKey, byte[]>();
        var known = await database.FindPostingsAsync(connection, [.. gone.Select(PostingKey.Of).Distinct()]);
        foreach (var occurrence in gone) Change(rows, known, occurrence, isThere: false);
        await database.WritePostingsAsync(connection, rows);
    }

    private static byte[] Added(byte[]? stored, List<ushort> added)
    {
        if (stored is null) return Places.Write(added);
        var places = Places.Read(stored);
        foreach (var place in added) places.Set(place, true);
        return places.Write();
    }

    private static void Change(
        SortedDictionary<PostingKey, byte[]> rows, Dictionary<PostingKey, byte[]> known, Occurrence occurrence, bool isThere)
    {
        var key = PostingKey.Of(occurrence);
        var places = Places.Read(rows.GetValueOrDefault(key) ?? known.GetValueOrDefault(key) ?? []);
        places.Set(Places.PlaceOf(occurrence.Position), isThere);
        rows[key] = places.Write();
    }
}
