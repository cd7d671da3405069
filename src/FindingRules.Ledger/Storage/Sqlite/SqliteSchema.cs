using FindingRules.Ledger.Failures;
using Microsoft.Data.Sqlite;

namespace FindingRules.Ledger.Storage.Sqlite;

/// <summary>Begins a ledger in a new file and brings an older one to the present form.</summary>
internal static class SqliteSchema
{
    // "FRLG": how this program, and the command `file`, tell a ledger from other SQLite files.
    private const long ApplicationId = 0x46524C47;

    public static void Prepare(string path, string connectionString, LedgerOptions options)
    {
        if (Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder && !Directory.Exists(folder))
            throw Fail.Missing(path, "its folder is not there");
        MakeForOwnerOnly(path);
        using var connection = new SqliteConnection(connectionString);
        connection.Open();
        Set(connection, $"busy_timeout = {(long)options.LockWait.TotalMilliseconds}");
        var scripts = SchemaScripts.Of("sqlite");
        if (!IsNew(connection) && Check(path, connection, scripts.Count) == scripts.Count) return;

        using (var mode = (SqliteCommand)connection.Command("PRAGMA journal_mode = WAL"))
            if (mode.ExecuteScalar() is not "wal") throw Fail.Device(path, "its file system takes no write-ahead log");
        Set(connection, "synchronous = FULL");
        Run(connection, "BEGIN IMMEDIATE");
        // Another process may have done it while this one waited for the lock.
        for (var form = IsNew(connection) ? 0 : Check(path, connection, scripts.Count); form < scripts.Count; form++)
            Run(connection, scripts[form]);
        Set(connection, $"application_id = {ApplicationId}", $"user_version = {scripts.Count}");
        Run(connection, "COMMIT");
    }

    /// <summary>Whether a ledger that is there has the present form or an older one.</summary>
    public static bool IsPresent(string path, string connectionString)
    {
        using var connection = new SqliteConnection(connectionString);
        connection.Open();
        var known = SchemaScripts.Of("sqlite").Count;
        return Check(path, connection, known) == known;
    }

    // Its log takes the mode of the file. Where it cannot be made, SQLite says why.
    private static void MakeForOwnerOnly(string path)
    {
        if (OperatingSystem.IsWindows() || Path.Exists(path)) return;
        try
        {
            new FileStream(path, new FileStreamOptions
            {
                Mode = FileMode.CreateNew,
                Access = FileAccess.Write,
                UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite,
            }).Dispose();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Another process was quicker, or it may not be made.
        }
    }

    public static void Set(SqliteConnection connection, params ReadOnlySpan<string> pragmas)
    {
        foreach (var pragma in pragmas) Run(connection, $"PRAGMA {pragma}");
    }

    private static int Check(string path, SqliteConnection connection, int known)
    {
        if (Number(connection, "PRAGMA application_id") != ApplicationId) throw Fail.NotALedger(path);
        var form = (int)Number(connection, "PRAGMA user_version");
        return form <= known ? form : throw Fail.NewerSchema(path, form, known);
    }

    private static bool IsNew(SqliteConnection connection) => Number(connection, "SELECT count(*) FROM sqlite_master") == 0;

    private static long Number(SqliteConnection connection, string sql)
    {
        using var command = (SqliteCommand)connection.Command(sql);
        return (long)command.ExecuteScalar()!;
    }

    private static void Run(SqliteConnection connection, string sql)
    {
        using var command = (SqliteCommand)connection.Command(sql);
        command.ExecuteNonQuery();
    }
}
