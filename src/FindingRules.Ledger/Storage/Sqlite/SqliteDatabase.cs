using System.Data.Common;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Indexing;
using FindingRules.Ledger.Merkle;
using Microsoft.Data.Sqlite;

namespace FindingRules.Ledger.Storage.Sqlite;

/// <summary>
/// One file, with a write-ahead log. One connection writes records, one the index, and others read; other processes may read and even
/// append, for each transaction takes the lock and reads the state of the tree anew.
/// </summary>
internal sealed class SqliteDatabase : ILedgerDatabase
{
    private readonly string _readString;
    private readonly string _writeString;
    private readonly SqliteWriter _records;
    private readonly SqliteWriter _index;
    private SqlitePlace? _place;

    private SqliteDatabase(string path, LedgerOptions options, bool isStill = false)
    {
        Name = path;
        LockWait = options.LockWait;
        _readString = ConnectionString(
            isStill ? $"{new Uri(Path.GetFullPath(path)).AbsoluteUri}?immutable=1" : path, SqliteOpenMode.ReadOnly, isPooled: true);
        _writeString = ConnectionString(path, SqliteOpenMode.ReadWrite, isPooled: false);
        _records = new SqliteWriter(_writeString, "FULL", options);
        _index = new SqliteWriter(_writeString, "NORMAL", options);
    }

    public string Name { get; }

    public bool IsOfPresentForm { get; private set; } = true;

    public string BeginSnapshot => "BEGIN";

    private TimeSpan LockWait { get; }

    /// <summary>Opens the file to read and write, and begins a ledger in it where there is none.</summary>
    public static SqliteDatabase Open(string path, LedgerOptions options)
    {
        var database = new SqliteDatabase(path, options);
        try
        {
            SqliteSchema.Prepare(path, ConnectionString(path, SqliteOpenMode.ReadWriteCreate, isPooled: false), options);
            database._place = new SqlitePlace(ConnectionString(path, SqliteOpenMode.ReadOnly, isPooled: false));
            return database;
        }
        catch (SqliteException e)
        {
            throw SqliteFailures.Explain(e, path, options.LockWait);
        }
    }

    /// <summary>Opens the file to read only; it must hold a ledger.</summary>
    public static SqliteDatabase OpenToRead(string path)
    {
        if (!File.Exists(path)) throw Fail.Missing(path, "there is no such file");
        try
        {
            return OpenToRead(path, isStill: false);
        }
        // To read beside those who write, files beside it are needed. Where they are not and cannot be made, nobody writes.
        catch (LedgerException e) when (e.Failure is LedgerFailure.Missing or LedgerFailure.ReadOnly && !File.Exists($"{path}-wal"))
        {
            return OpenToRead(path, isStill: true);
        }
    }

    private static SqliteDatabase OpenToRead(string path, bool isStill)
    {
        var database = new SqliteDatabase(path, new LedgerOptions(), isStill);
        try
        {
            database.IsOfPresentForm = SqliteSchema.IsPresent(path, database._readString);
            return database;
        }
        catch (SqliteException e)
        {
            throw SqliteFailures.Explain(e, path, database.LockWait);
        }
    }

    public async ValueTask<DbConnection> ConnectAsync(CancellationToken cancellation)
    {
        CheckPlace();
        var connection = new SqliteConnection(_readString);
        await connection.OpenAsync(cancellation);
        return connection;
    }

    public async Task<T> WriteAsync<T>(WriteKind kind, Func<DbConnection, Task<T>> work)
    {
        var writer = kind == WriteKind.Index ? _index : _records;
        CheckPlace();
        try
        {
            var result = await writer.WriteAsync(work);
            // Nothing is acknowledged that went into a file that nobody will find again.
            CheckPlace();
            return result;
        }
        catch (SqliteException e)
        {
            throw SqliteFailures.Explain(e, Name, LockWait);
        }
    }

    public Task<Frontier> LockTreeAsync(DbConnection connection) => Task.FromResult(_records.Commands.ReadTree(Name));

    public async Task<long> LockIndexAsync(DbConnection connection) =>
        await connection.ScalarAsync<long>("SELECT indexed FROM watermark");

    public Task InsertAsync(DbConnection connection, AppendedRows rows)
    {
        _records.Commands.Insert(rows);
        return Task.CompletedTask;
    }

    public Task InsertAsync(DbConnection connection, IndexRows rows)
    {
        _index.IndexCommands.Insert(rows);
        return Task.CompletedTask;
    }

    public Task<Dictionary<PostingKey, byte[]>> FindPostingsAsync(DbConnection connection, IReadOnlyCollection<PostingKey> keys) =>
        Task.FromResult(SqlitePostings.Find((SqliteConnection)connection, keys));

    public Task WritePostingsAsync(DbConnection connection, IReadOnlyDictionary<PostingKey, byte[]> rows)
    {
        SqlitePostings.Write((SqliteConnection)connection, rows);
        return Task.CompletedTask;
    }

    // Pages are overwritten when freed (secure_delete); what the log still holds of them goes with the log, once nobody reads in it.
    public async Task<bool> ForgetErasedAsync()
    {
        CheckPlace();
        try
        {
            await using var connection = new SqliteConnection(_writeString);
            await connection.OpenAsync();
            // Who appends waits as long as this waits.
            SqliteSchema.Set(connection, "busy_timeout = 100");
            return await connection.ScalarAsync<long>("PRAGMA wal_checkpoint(TRUNCATE)") == 0;
        }
        catch (SqliteException e)
        {
            throw SqliteFailures.Explain(e, Name, LockWait);
        }
    }

    public LedgerException? Explain(Exception failure) =>
        failure is SqliteException e ? SqliteFailures.Explain(e, Name, LockWait) : null;

    public ValueTask DisposeAsync()
    {
        // The last to close takes the log into the file, which a connection that only reads cannot.
        using (var pool = new SqliteConnection(_readString)) SqliteConnection.ClearPool(pool);
        _place?.Dispose();
        _index.Dispose();
        _records.Dispose();
        return ValueTask.CompletedTask;
    }

    private void CheckPlace()
    {
        if (_place?.IsLost == true) throw Fail.Missing(Name, "the file that was opened is gone from there, or another one is in its place");
    }

    private static string ConnectionString(string path, SqliteOpenMode mode, bool isPooled) =>
        new SqliteConnectionStringBuilder { DataSource = path, Mode = mode, Pooling = isPooled, DefaultTimeout = 1 }.ToString();
}
