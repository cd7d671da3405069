using System.Data.Common;
using FindingRules.Ledger.Erasing;
using FindingRules.Ledger.Merkle;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Storage;
using Microsoft.Data.Sqlite;

namespace FindingRules.Ledger.Tests.Verifying;

/// <summary>What somebody with the file, SQL and this source can do to a ledger; the signing key is what he has not.</summary>
internal static class Tampering
{
    public static readonly string[] Ways =
        ["header", "content", "answer", "salt", "terms", "swap", "remove", "cut", "insert", "no body", "kind", "bodies"];

    /// <summary>With all hashes computed anew it contradicts nothing; the body is told to be vouched for by nothing.</summary>
    public const string ForgedErasure = "forged erasure";

    /// <param name="isCovered">Whether every hash that can be computed without the key is computed anew.</param>
    public static async Task DoAsync(string path, string way, Random random, bool isCovered)
    {
        await using var connection = new SqliteConnection($"Data Source={path};Pooling=false");
        await connection.OpenAsync();
        await connection.ExecuteAsync("PRAGMA synchronous = OFF; BEGIN");
        foreach (var trigger in (string[])[
            "record_stays", "record_unchanged", "body_unchanged"]) await connection.ExecuteAsync($"DROP TRIGGER {trigger}");
        await DoAsync(connection, way, random, isCovered);
        await connection.ExecuteAsync("COMMIT");
    }

    /// <summary>On a connection in whose transaction no trigger stands in the way.</summary>
    public static async Task DoAsync(DbConnection connection, string way, Random random, bool isCovered)
    {
        var size = await connection.ScalarAsync<long>("SELECT count(*) FROM record");
        // The first ones hold the erased, of which there is nothing to change.
        var at = 20 + random.NextInt64(size - 20);
        var other = (at + 1 + random.NextInt64(size - 1)) % size;
        await (way switch
        {
            "header" => ChangeAsync(connection, "record", "header", at, random),
            "content" or "answer" or "salt" or "terms" => ChangeAsync(connection, "body", way, at, random),
            "swap" => SwapAsync(connection, ["record", "body"], at, other),
            "bodies" => SwapAsync(connection, ["body"], at, other),
            "remove" => connection.ExecuteAsync($"DELETE FROM record WHERE position = {at}; DELETE FROM body WHERE position = {at}"),
            "cut" => connection.ExecuteAsync($"DELETE FROM record WHERE position >= {at}; DELETE FROM body WHERE position >= {at}"),
            "insert" => InsertAsync(connection, at, size),
            "no body" => connection.ExecuteAsync($"DELETE FROM body WHERE position = {at}"),
            ForgedErasure => ForgeErasureAsync(connection, at, size),
            "kind" => connection.ExecuteAsync($"UPDATE record SET kind = 4 WHERE position = {at}"),
            _ => throw new ArgumentOutOfRangeException(nameof(way), way, "There is no such way."),
        });
        if (isCovered) await CoverAsync(connection);
    }

    private static async Task ChangeAsync(DbConnection connection, string table, string column, long at, Random random)
    {
        var bytes = (await connection.ScalarAsync<byte[]>($"SELECT {column} FROM {table} WHERE position = {at}"))!;
        if (bytes.Length == 0) bytes = [0];
        bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8));
        await connection.ExecuteAsync($"UPDATE {table} SET {column} = @bytes WHERE position = {at}", ("@bytes", bytes));
    }

    private static async Task SwapAsync(DbConnection connection, string[] tables, long at, long other)
    {
        foreach (var table in tables)
            foreach (var (from, to) in new[] { (at, -1L), (other, at), (-1L, other) })
                await connection.ExecuteAsync($"UPDATE {table} SET position = {to} WHERE position = {from}");
    }

    private static async Task InsertAsync(DbConnection connection, long at, long size)
    {
        for (var position = size - 1; position >= at; position--)
            foreach (var table in (string[])["record", "body"])
                await connection.ExecuteAsync($"UPDATE {table} SET position = {position + 1} WHERE position = {position}");
        await connection.ExecuteAsync(
            $"INSERT INTO record SELECT {at}, @id, kind, time, leaf, header FROM record WHERE position = {at + 1};"
            + $"INSERT INTO body SELECT {at}, salt, content, answer, terms FROM body WHERE position = {at + 1}", ("@id", new byte[] { 1 }));
    }

    // An erasure record needs no key; only its place in the tree must be computed, which is done for all when all is covered.
    private static async Task ForgeErasureAsync(DbConnection connection, long at, long size)
    {
        var forged = NewRecord.Of(
            new RecordHead(RecordKind.Erasure, "archive"), ErasureJson.Write("retention", [new PositionRange(at, at)]), [],
            IndexTerms.None, DateTimeOffset.UnixEpoch, null);
        await connection.ExecuteAsync(
            $"DELETE FROM body WHERE position = {at};"
            + $"INSERT INTO record VALUES ({size}, @id, {(int)RecordKind.Erasure}, 0, @leaf, @header);"
            + $"INSERT INTO body VALUES ({size}, @salt, @content, @answer, @terms)",
            ("@id", forged.Header.Id.ToByteArray(bigEndian: true)), ("@leaf", forged.Leaf), ("@header", forged.HeaderBytes),
            ("@salt", forged.Body.Salt), ("@content", forged.Body.Content), ("@answer", forged.Body.Answer),
            ("@terms", forged.Body.Terms));
    }

    private static async Task CoverAsync(DbConnection connection)
    {
        var records = await connection.ListAsync(
            r => (Position: r.GetInt64(0), Header: r.GetFieldValue<byte[]>(1)), "SELECT position, header FROM record ORDER BY position");
        var (tree, inner) = (new Frontier(), new List<KeptNode>());
        for (var i = 0; i < records.Count; i++)
        {
            var leaf = TreeHash.Leaf(records[i].Header);
            tree.Append(leaf, inner);
            await connection.ExecuteAsync($"UPDATE record SET leaf = @leaf WHERE position = {records[i].Position}", ("@leaf", leaf));
            // Positions close up, so that no gap tells.
            foreach (var table in (string[])["record", "body"])
                await connection.ExecuteAsync($"UPDATE {table} SET position = {i} WHERE position = {records[i].Position}");
        }
        await connection.ExecuteAsync(
            "UPDATE tree SET size = @size, frontier = @hashes", ("@size", tree.Size), ("@hashes", tree.ToBytes()));
        await connection.ExecuteAsync("DELETE FROM inner_hash");
        foreach (var node in inner)
            await connection.ExecuteAsync(
                "INSERT INTO inner_hash VALUES (@level, @place, @hash)", ("@level", node.Level), ("@place", node.Place),
                    ("@hash", node.Hash));
    }
}
