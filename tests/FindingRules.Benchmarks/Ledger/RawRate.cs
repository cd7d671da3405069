using System.Diagnostics;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace FindingRules.Benchmarks.Ledger;

/// <summary>What the store does by itself: rows of 3 KB, 64 to a transaction, each transaction on disk before the next.</summary>
internal static class RawRate
{
    private const int BatchRows = 64;
    private static readonly byte[] Row = [.. Enumerable.Range(0, 3072).Select(i => (byte)(i * 31))];

    public static Rate OfSqlite(string path, TimeSpan length)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=false");
        connection.Open();
        Run(connection, "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; "
            + "CREATE TABLE raw (id INTEGER PRIMARY KEY, row BLOB NOT NULL)");
        using var insert = connection.CreateCommand();
        insert.CommandText = "INSERT INTO raw (row) VALUES (@row)";
        insert.Parameters.AddWithValue("@row", Row);
        insert.Prepare();
        return Repeat(length, () =>
        {
            Run(connection, "BEGIN IMMEDIATE");
            for (var i = 0; i < BatchRows; i++) insert.ExecuteNonQuery();
            Run(connection, "COMMIT");
        });
    }

    public static Rate OfPostgreSql(string connectionString, TimeSpan length)
    {
        using var source = NpgsqlDataSource.Create(connectionString);
        using var connection = source.OpenConnection();
        using (var create = new NpgsqlCommand(
            "DROP TABLE IF EXISTS raw; CREATE TABLE raw (id BIGSERIAL PRIMARY KEY, row BYTEA NOT NULL)", connection))
            create.ExecuteNonQuery();
        using var insert = new NpgsqlCommand("INSERT INTO raw (row) SELECT unnest(@rows::bytea[])", connection);
        insert.Parameters.AddWithValue("rows", Enumerable.Repeat(Row, BatchRows).ToArray());
        insert.Prepare();
        var rate = Repeat(length, () => insert.ExecuteNonQuery());
        using var drop = new NpgsqlCommand("DROP TABLE raw", connection);
        drop.ExecuteNonQuery();
        return rate;
    }

    private static Rate Repeat(TimeSpan length, Action batch)
    {
        for (var i = 0; i < 50; i++) batch();
        var waits = new List<TimeSpan>();
        var watch = Stopwatch.StartNew();
        while (watch.Elapsed < length)
        {
            var began = watch.Elapsed;
            batch();
            for (var i = 0; i < BatchRows; i++) waits.Add(watch.Elapsed - began);
        }
        return Rate.Of(watch.Elapsed, waits);
    }

    private static void Run(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // Constants of this file.
        command.CommandText = sql;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }
}
