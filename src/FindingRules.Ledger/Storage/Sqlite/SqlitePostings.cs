using FindingRules.Ledger.Indexing;
using Microsoft.Data.Sqlite;

namespace FindingRules.Ledger.Storage.Sqlite;

/// <summary>Rows of the index, one by one but each command prepared once.</summary>
internal static class SqlitePostings
{
    public static Dictionary<PostingKey, byte[]> Find(SqliteConnection connection, IReadOnlyCollection<PostingKey> keys)
    {
        using var command = (SqliteCommand)connection.Command(
            "SELECT positions FROM posting WHERE word = @word AND chunk = @chunk", ("@word", 0L), ("@chunk", 0L));
        command.Prepare();
        var found = new Dictionary<PostingKey, byte[]>();
        foreach (var key in keys.Order())
        {
            command.Parameters[0].Value = key.Word;
            command.Parameters[1].Value = key.Chunk;
            if (command.ExecuteScalar() is byte[] positions) found.Add(key, positions);
        }
        return found;
    }

    public static void Write(SqliteConnection connection, IReadOnlyDictionary<PostingKey, byte[]> rows)
    {
        using var put = new Prepared(connection, "INSERT OR REPLACE INTO posting VALUES (@1, @2, @3)", 3);
        using var remove = new Prepared(connection, "DELETE FROM posting WHERE word = @1 AND chunk = @2", 2);
        foreach (var (key, positions) in rows)
            if (positions.Length > 0) put.Run(key.Word, key.Chunk, positions);
            else remove.Run(key.Word, key.Chunk);
    }
}
