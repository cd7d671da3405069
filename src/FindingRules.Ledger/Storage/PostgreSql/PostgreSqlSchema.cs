using FindingRules.Ledger.Failures;
using Npgsql;

namespace FindingRules.Ledger.Storage.PostgreSql;

/// <summary>Begins a ledger in a schema and brings an older one to the present form.</summary>
internal static class PostgreSqlSchema
{
    // Held while the form is looked at and changed, so that services that start together do it one after the other.
    private const long SchemaLock = 0x46524C47;

    public static async Task PrepareAsync(NpgsqlConnection connection, string name)
    {
        var scripts = SchemaScripts.Of("postgresql");
        await using var transaction = await connection.BeginTransactionAsync();
        await connection.ExecuteAsync("SELECT pg_advisory_xact_lock(@lock)", ("@lock", SchemaLock));
        await MakeSchemaAsync(connection);
        var form = await FormAsync(connection, name, scripts.Count) ?? 0;
        for (var next = form; next < scripts.Count; next++) await connection.ExecuteAsync(scripts[next]);
        if (form == 0) await connection.ExecuteAsync("INSERT INTO about VALUES ('form', @form)", ("@form", $"{scripts.Count}"));
        else if (form < scripts.Count) await connection.ExecuteAsync(
            "UPDATE about SET value = @form WHERE name = 'form'", ("@form", $"{scripts.Count}"));
        await transaction.CommitAsync();
    }

    /// <summary>Whether a ledger that is there has the present form or an older one.</summary>
    public static async Task<bool> IsPresentAsync(NpgsqlConnection connection, string name)
    {
        var known = SchemaScripts.Of("postgresql").Count;
        return await FormAsync(connection, name, known) is { } form ? form == known : throw Fail.Missing(name, "no ledger was begun there");
    }

    /// <summary>Null where there are no tables yet.</summary>
    private static async Task<int?> FormAsync(NpgsqlConnection connection, string name, int known)
    {
        if (await connection.ScalarAsync<long>(
            "SELECT count(*) FROM information_schema.tables WHERE table_schema = current_schema()") == 0) return null;
        var isLedger = await connection.ScalarAsync<bool>("SELECT to_regclass('about') IS NOT NULL AND to_regclass('tree') IS NOT NULL");
        if (!isLedger) throw Fail.NotALedger(name);
        var form = int.Parse(await connection.ScalarAsync<string>("SELECT value FROM about WHERE name = 'form'") ?? "0");
        return form <= known ? form : throw Fail.NewerSchema(name, form, known);
    }

    private static async Task MakeSchemaAsync(NpgsqlConnection connection)
    {
        if (await connection.ScalarAsync<string>("SELECT current_schema()") is not null) return;
        var first = await connection.ScalarAsync<string>("SELECT trim(split_part(current_setting('search_path'), ',', 1), ' \"')");
        await connection.ExecuteAsync($"CREATE SCHEMA IF NOT EXISTS \"{first!.Replace("\"", "\"\"", StringComparison.Ordinal)}\"");
    }
}
