using FindingRules.Ledger.Feedback;
using FindingRules.Ledger.Indexing;
using Npgsql;

namespace FindingRules.Ledger.Storage.PostgreSql;

/// <summary>Writes many rows with few statements, all sent at once: columns go as arrays.</summary>
internal static class PostgreSqlInsertion
{
    public static async Task InsertAsync(NpgsqlConnection connection, AppendedRows rows)
    {
        var records = rows.Records;
        var positions = Enumerable.Range(0, records.Count).Select(i => rows.First + i).ToArray();
        await using var batch = connection.CreateBatch();
        batch.Add(
            "INSERT INTO record SELECT * FROM unnest(@1::bigint[], @2::bytea[], @3::smallint[], @4::bigint[], @5::bytea[], @6::bytea[])",
            positions, records.Select(r => r.Header.Id.ToByteArray(bigEndian: true)).ToArray(),
            records.Select(r => (short)r.Header.Kind).ToArray(), records.Select(r => r.Header.Time.ToUnixTimeMilliseconds()).ToArray(),
            records.Select(r => r.Leaf).ToArray(), records.Select(r => r.HeaderBytes).ToArray());
        batch.Add(
            "INSERT INTO body SELECT * FROM unnest(@1::bigint[], @2::bytea[], @3::bytea[], @4::bytea[], @5::bytea[])",
            positions, records.Select(r => r.Body.Salt).ToArray(), records.Select(r => r.Body.Content).ToArray(),
            records.Select(r => r.Body.Answer).ToArray(), records.Select(r => r.Body.Terms).ToArray());
        foreach (var node in rows.Inner) batch.Add("INSERT INTO inner_hash VALUES (@1, @2, @3)", node.Level, node.Place, node.Hash);
        var retries = records.Select((r, i) => (r.Retry, Position: positions[i])).Where(r => r.Retry is not null).ToArray();
        if (retries.Length > 0)
            batch.Add(
                "INSERT INTO retry SELECT * FROM unnest(@1::bytea[], @2::bytea[], @3::bigint[])",
                retries.Select(r => r.Retry!.Key).ToArray(), retries.Select(r => r.Retry!.Request).ToArray(),
                    retries.Select(r => r.Position).ToArray());
        batch.Add("UPDATE tree SET size = @1, frontier = @2", rows.Tree.Size, rows.Tree.ToBytes());
        await batch.ExecuteNonQueryAsync();
    }

    public static async Task InsertAsync(NpgsqlConnection connection, IndexRows rows)
    {
        await using var batch = connection.CreateBatch();
        batch.Add(
            "INSERT INTO hour SELECT * FROM unnest(@1::integer[], @2::bigint[], @3::bigint[]) ON CONFLICT (hour) DO UPDATE "
            + "SET first = least(hour.first, excluded.first), last = greatest(hour.last, excluded.last)",
            rows.Hours.Keys.Select(h => (int)h).ToArray(), rows.Hours.Values.Select(h => h.First).ToArray(),
                rows.Hours.Values.Select(h => h.Last).ToArray());
        AddCounts(batch, [.. rows.Counts.Where(c => c.Value != 0)]);
        foreach (var ((reading, suggestion), verdict) in rows.Verdicts)
            batch.Add(
                "INSERT INTO verdict VALUES (@1, @2, @3, @4) "
                + "ON CONFLICT (reading, suggestion) DO UPDATE SET rules = excluded.rules, reason = excluded.reason",
                reading, suggestion, FeedbackIndexing.WriteRules(verdict.Rules), verdict.Reason);
        batch.Add("UPDATE watermark SET indexed = @1", rows.Indexed);
        await batch.ExecuteNonQueryAsync();
    }

    public static async Task<Dictionary<PostingKey, byte[]>> FindPostingsAsync(
        NpgsqlConnection connection, IReadOnlyCollection<PostingKey> keys)
    {
        if (keys.Count == 0) return [];
        var rows = await connection.ListAsync(
            r => (new PostingKey(r.GetInt64(0), r.GetInt64(1)), r.GetFieldValue<byte[]>(2)),
            "SELECT p.word, p.chunk, p.positions FROM unnest(@words::bigint[], @chunks::bigint[]) k(word, chunk) "
            + "JOIN posting p ON p.word = k.word AND p.chunk = k.chunk",
            ("@words", keys.Select(k => k.Word).ToArray()), ("@chunks", keys.Select(k => k.Chunk).ToArray()));
        return rows.ToDictionary(r => r.Item1, r => r.Item2);
    }

    public static async Task WritePostingsAsync(NpgsqlConnection connection, IReadOnlyDictionary<PostingKey, byte[]> rows)
    {
        await using var batch = connection.CreateBatch();
        var (put, gone) = (rows.Where(r => r.Value.Length > 0).ToArray(), rows.Where(r => r.Value.Length == 0).ToArray());
        batch.Add(
            "INSERT INTO posting SELECT * FROM unnest(@1::bigint[], @2::bigint[], @3::bytea[]) "
            + "ON CONFLICT (word, chunk) DO UPDATE SET positions = excluded.positions",
            put.Select(r => r.Key.Word).ToArray(), put.Select(r => r.Key.Chunk).ToArray(), put.Select(r => r.Value).ToArray());
        if (gone.Length > 0)
            batch.Add(
                "DELETE FROM posting p USING unnest(@1::bigint[], @2::bigint[]) k(word, chunk) WHERE p.word = k.word AND p.chunk = k.chunk",
                gone.Select(r => r.Key.Word).ToArray(), gone.Select(r => r.Key.Chunk).ToArray());
        await batch.ExecuteNonQueryAsync();
    }

    private static void AddCounts(NpgsqlBatch batch, KeyValuePair<TallyKey, long>[] counts)
    {
        if (counts.Length == 0) return;
        batch.Add(
            "INSERT INTO tally "
            + "SELECT * FROM unnest(@1::text[], @2::text[], @3::text[], @4::text[], @5::integer[], @6::text[], @7::bigint[]) "
            + "ON CONFLICT (rule, pack, version, month, what, detail) DO UPDATE SET count = tally.count + excluded.count",
            counts.Select(c => c.Key.Rule).ToArray(), counts.Select(c => c.Key.Pack).ToArray(),
                counts.Select(c => c.Key.Version).ToArray(),
            counts.Select(c => c.Key.Month).ToArray(), counts.Select(c => (int)c.Key.What).ToArray(),
                counts.Select(c => c.Key.Detail).ToArray(),
            counts.Select(c => c.Value).ToArray());
    }

    private static void Add(this NpgsqlBatch batch, string sql, params ReadOnlySpan<object?> values)
    {
#pragma warning disable CA2100 // The SQL is a constant of this file; values are parameters.
        var command = new NpgsqlBatchCommand(sql);
#pragma warning restore CA2100
        for (var i = 0; i < values.Length; i++) command.Parameters.Add(
            new NpgsqlParameter { ParameterName = $"{i + 1}", Value = values[i] ?? DBNull.Value });
        batch.BatchCommands.Add(command);
    }
}
