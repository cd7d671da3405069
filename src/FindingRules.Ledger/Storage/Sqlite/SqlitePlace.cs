using System.Runtime.InteropServices;
using Microsoft.Data.Sqlite;

namespace FindingRules.Ledger.Storage.Sqlite;

/// <summary>
/// Holds the file that was opened at first, and tells whether it still lies where it lay: what is written to a file that was removed, or
/// that another one was put in the place of, is lost with the last connection.
/// </summary>
internal sealed class SqlitePlace : IDisposable
{
    // Source: SQLite, sqlite3.h, SQLITE_FCNTL_HAS_MOVED.
    private const int HasMoved = 20;
    private readonly SqliteConnection _first;

    public SqlitePlace(string connectionString)
    {
        _first = new SqliteConnection(connectionString);
        _first.Open();
    }

    public bool IsLost => FileControl(_first.Handle!, null, HasMoved, out var moved) == SQLitePCL.raw.SQLITE_OK && moved != 0;

    public void Dispose() => _first.Dispose();

    [DllImport("e_sqlite3", EntryPoint = "sqlite3_file_control", ExactSpelling = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories | DllImportSearchPath.AssemblyDirectory)]
    private static extern int FileControl(SQLitePCL.sqlite3 database, byte[]? name, int operation, out int answer);
}
