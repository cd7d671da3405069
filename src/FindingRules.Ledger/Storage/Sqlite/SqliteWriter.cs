using System.Data.Common;
using Microsoft.Data.Sqlite;

namespace FindingRules.Ledger.Storage.Sqlite;

/// <summary>A connection that writes, with its commands prepared. After a failure it is opened anew, so that nothing
/// of it stays.</summary>
internal sealed class SqliteWriter(string connectionString, string synchronous, LedgerOptions options) : IDisposable
{
    private SqliteConnection? _connection;
    private SqliteAppendCommands? _append;
    private SqliteIndexCommands? _index;

    public SqliteAppendCommands Commands => _append ??= new SqliteAppendCommands(Connection);

    public SqliteIndexCommands IndexCommands => _index ??= new SqliteIndexCommands(Connection);

    private SqliteConnection Connection => _connection ??= Open();

    /// <summary>One transaction, which takes the lock of the file before it reads anything.</summary>
    public async Task<T> WriteAsync<T>(Func<DbConnection, Task<T>> work)
    {
        try
        {
            Run("BEGIN IMMEDIATE");
            var result = await work(Connection);
            Run("COMMIT");
            return result;
        }
        catch
        {
            Dispose();
            throw;
        }
    }

    public void Run(string sql)
    {
        using var command = (SqliteCommand)Connection.Command(sql);
        command.ExecuteNonQuery();
    }

    /// <summary>Closing the connection takes back what was not committed.</summary>
    public void Dispose()
    {
        _append?.Dispose();
        _index?.Dispose();
        _connection?.Dispose();
        (_append, _index, _connection) = (null, null, null);
    }

    private SqliteConnection Open()
    {
        var connection = new SqliteConnection(connectionString);
        try
        {
            connection.Open();
            SqliteSchema.Set(connection, $"synchronous = {synchronous}", $"busy_timeout = {(long)options.LockWait.TotalMilliseconds}");
            SqliteSchema.Set(connection, "secure_delete = ON", "cache_size = -16384", "wal_autocheckpoint = 2000");
            if (options.MostPages > 0) SqliteSchema.Set(connection, $"max_page_count = {options.MostPages}");
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }
}
