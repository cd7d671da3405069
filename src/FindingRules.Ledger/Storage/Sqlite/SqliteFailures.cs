using FindingRules.Ledger.Failures;
using Microsoft.Data.Sqlite;
using static SQLitePCL.raw;

namespace FindingRules.Ledger.Storage.Sqlite;

/// <summary>SQLite's result codes in the ledger's words.</summary>
internal static class SqliteFailures
{
    public static LedgerException Explain(SqliteException failure, string path, TimeSpan waited) => failure.SqliteErrorCode switch
    {
        SQLITE_FULL => Fail.Full(path, failure),
        SQLITE_READONLY or SQLITE_PERM => Fail.ReadOnly(path, failure),
        SQLITE_BUSY or SQLITE_LOCKED => Fail.Locked(path, waited, failure),
        SQLITE_NOTADB => Fail.NotALedger(path, failure),
        SQLITE_CORRUPT => Fail.Damaged(path, "its pages contradict each other", failure),
        SQLITE_CANTOPEN => CannotOpen(path, failure),
        SQLITE_IOERR => DeviceFailed(path, failure),
        _ => Fail.Device(path, Words(failure), failure),
    };

    private static LedgerException CannotOpen(string path, SqliteException failure)
    {
        if (Directory.Exists(path)) return Fail.Missing(path, "it is a folder", failure);
        return File.Exists(path)
            ? Fail.Missing(path, "it, or the files beside it, may not be opened", failure)
            : Fail.Missing(path, "it is not there and cannot be made there", failure);
    }

    // A file that may not grow (a limit of the process or of its quota) is reported as a failed write.
    private static LedgerException DeviceFailed(string path, SqliteException failure) => failure.SqliteExtendedErrorCode switch
    {
        SQLITE_IOERR_WRITE or SQLITE_IOERR_SHMSIZE or SQLITE_IOERR_TRUNCATE => Fail.Full(path, failure),
        _ => Fail.Device(path, Words(failure), failure),
    };

    private static string Words(SqliteException failure) => $"SQLite reports {failure.SqliteExtendedErrorCode}";
}
