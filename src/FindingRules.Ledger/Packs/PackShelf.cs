using System.Collections.Concurrent;
using System.Data.Common;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Storage;

namespace FindingRules.Ledger.Packs;

/// <summary>Keeps the texts of packs by their digest, each once.</summary>
internal sealed class PackShelf(ILedgerDatabase database, TimeProvider time)
{
    // Digests that were seen in the store. Packs are never removed, so what was seen stays true.
    private readonly ConcurrentDictionary<string, bool> _known = new(StringComparer.Ordinal);

    public async Task<bool> HasAsync(string textDigest)
    {
        if (_known.ContainsKey(textDigest)) return true;
        var count = await database.ReadAsync(c =>
            c.ScalarAsync<long>("SELECT count(*) FROM pack WHERE text_digest = @digest", ("@digest", textDigest)));
        return count > 0 && (_known[textDigest] = true);
    }

    /// <summary>Runs inside the writing task.</summary>
    public async Task<bool> StoreAsync(PackTexts texts)
    {
        var isNew = await database.WriteAsync(WriteKind.Record, c => StoreAsync(c, texts));
        _known[texts.Pack.TextDigest] = true;
        return isNew;
    }

    public Task<PackTexts?> FindAsync(string textDigest) => database.ReadAsync(async connection =>
    {
        var pack = (await ListAsync(connection, "WHERE text_digest = @digest", ("@digest", textDigest))).SingleOrDefault();
        if (pack is null) return null;
        var files = await connection.ListAsync(
            r => new PackText(r.GetString(0), r.GetFieldValue<byte[]>(1)),
            "SELECT path, bytes FROM pack_file WHERE text_digest = @digest", ("@digest", textDigest));
        return new PackTexts(pack.Pack, [.. files.OrderBy(f => f.Path, StringComparer.Ordinal)]);
    });

    public Task<List<StoredPack>> ListAsync() => database.ReadAsync(c => ListAsync(c, "ORDER BY stored, text_digest"));

    public static Task<List<StoredPack>> ListAsync(
        DbConnection connection, string which, params (string Name, object? Value)[] parameters) =>
        connection.ListAsync(
            r => new StoredPack(
                new PackReference(r.GetString(0), r.GetString(1), r.GetString(2), r.GetString(3)),
                    DateTimeOffset.FromUnixTimeMilliseconds(r.GetInt64(4))),
            $"SELECT name, version, meaning_digest, text_digest, stored FROM pack {which}", parameters);

    private async Task<bool> StoreAsync(DbConnection connection, PackTexts texts)
    {
        var pack = texts.Pack;
        var digest = ("@digest", (object?)pack.TextDigest);
        await using var insert = connection.Command(
            "INSERT INTO pack VALUES (@digest, @meaning, @name, @version, @now) ON CONFLICT DO NOTHING", digest,
                ("@meaning", pack.MeaningDigest),
            ("@name", pack.Name), ("@version", pack.Version), ("@now", time.GetUtcNow().ToUnixTimeMilliseconds()));
        if (await insert.ExecuteNonQueryAsync() == 0) return false;
        foreach (var file in texts.Files)
            await connection.ExecuteAsync(
                "INSERT INTO pack_file VALUES (@digest, @path, @bytes)", digest, ("@path", file.Path), ("@bytes", file.Bytes.ToArray()));
        return true;
    }
}
