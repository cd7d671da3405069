using System.Data.Common;
using FindingRules.Ledger.Failures;
using FindingRules.Ledger.Indexing;
using FindingRules.Ledger.Merkle;
using Npgsql;

namespace FindingRules.Ledger.Storage.PostgreSql;

/// <summary>
/// A database that several services share. The row of the tree is locked by whoever appends, so that positions follow
/// each other without a
/// gap; a service that dies lets go of it, and its transaction was never there.
/// </summary>
internal sealed class PostgreSqlDatabase : ILedgerDatabase
{
    private const int MostConnections = 20;

    // A server or user may be set to answer before the record is on disk; this ledger never does.
    private const string Durable =
        "set_config('synchronous_commit', CASE WHEN current_setting('synchronous_commit') = 'off' THEN 'on' "
        + "ELSE current_setting('synchronous_commit') END, true)";

    private readonly NpgsqlDataSource _source;
    private readonly TimeSpan _lockWait;

    private PostgreSqlDatabase(LedgerLocation.PostgreSql at, LedgerOptions options)
    {
        Name = at.Name;
        _lockWait = options.LockWait;
        var builder = new NpgsqlConnectionStringBuilder(at.ConnectionString) { MaxAutoPrepare = 40, AutoPrepareMinUsages = 2 };
        // Several services share a server that by default takes a hundred connections.
        if (!builder.ShouldSerialize("Maximum Pool Size")) builder.MaxPoolSize = MostConnections;
        _source = NpgsqlDataSource.Create(builder);
    }

    public string Name { get; }

    private string LockTimeout => $"SET LOCAL lock_timeout = {(long)_lockWait.TotalMilliseconds}";

    public bool IsOfPresentForm { get; private set; } = true;

    public string BeginSnapshot => "BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY";

    public static Task<PostgreSqlDatabase> OpenAsync(LedgerLocation.PostgreSql at, LedgerOptions options) =>
        OpenAsync(at, options, async (connection, name) =>
        {
            await PostgreSqlSchema.PrepareAsync(connection, name);
            return true;
        });

    public static Task<PostgreSqlDatabase> OpenToReadAsync(LedgerLocation.PostgreSql at) =>
        OpenAsync(at, new LedgerOptions(), PostgreSqlSchema.IsPresentAsync);

    public async ValueTask<DbConnection> ConnectAsync(CancellationToken cancellation) => await _source.OpenConnectionAsync(cancellation);

    public async Task<T> WriteAsync<T>(WriteKind kind, Func<DbConnection, Task<T>> work)
    {
        try
        {
            await using var connection = await _source.OpenConnectionAsync();
            await using var transaction = await connection.BeginTransactionAsync();
            if (kind != WriteKind.Append) await connection.ExecuteAsync(Begin(kind));
            var result = await work(connection);
            await transaction.CommitAsync();
            return result;
        }
        catch (Exception e) when (Explain(e) is { } failure)
        {
            throw failure;
        }
    }

    public async Task<Frontier> LockTreeAsync(DbConnection connection)
    {
        // One way to the server and back, for all appends wait meanwhile.
        var rows = await connection.ListAsync(
            r => (Size: r.GetInt64(0), Hashes: r.GetFieldValue<byte[]>(1)),
            $"{LockTimeout}; SELECT size, frontier, {Durable} FROM tree FOR UPDATE");
        try
        {
            var (size, hashes) = rows.Single();
            return new Frontier(size, hashes);
        }
        catch (Exception e) when (e is InvalidDataException or InvalidOperationException)
        {
            throw Fail.Damaged(Name, "the state of its tree is not one", e);
        }
    }

    public Task<long> LockIndexAsync(DbConnection connection) => connection.ScalarAsync<long>("SELECT indexed FROM watermark FOR UPDATE");

    public Task InsertAsync(DbConnection connection, AppendedRows rows) =>
        PostgreSqlInsertion.InsertAsync((NpgsqlConnection)connection, rows);

    public Task InsertAsync(DbConnection connection, IndexRows rows) =>
        PostgreSqlInsertion.InsertAsync((NpgsqlConnection)connection, rows);

    public Task<Dictionary<PostingKey, byte[]>> FindPostingsAsync(DbConnection connection, IReadOnlyCollection<PostingKey> keys) =>
        PostgreSqlInsertion.FindPostingsAsync((NpgsqlConnection)connection, keys);

    public Task WritePostingsAsync(DbConnection connection, IReadOnlyDictionary<PostingKey, byte[]> rows) =>
        PostgreSqlInsertion.WritePostingsAsync((NpgsqlConnection)connection, rows);

    // Erased rows stay in the pages of a table until it is vacuumed.
    public async Task<bool> ForgetErasedAsync()
    {
        try
        {
            await using var connection = await _source.OpenConnectionAsync();
            foreach (var table in (string[])["body", "posting", "verdict", "retry"]) await connection.ExecuteAsync($"VACUUM {table}");
            return true;
        }
        catch (Exception e) when (Explain(e) is { } failure)
        {
            throw failure;
        }
    }

    public LedgerException? Explain(Exception failure) => PostgreSqlFailures.Explain(failure, Name, _lockWait);

    public ValueTask DisposeAsync() => _source.DisposeAsync();

    private string Begin(WriteKind kind) => kind == WriteKind.Index
        ? $"{LockTimeout}; SET LOCAL synchronous_commit = off"
        : $"{LockTimeout}; SELECT {Durable}";

    private static async Task<PostgreSqlDatabase> OpenAsync(
        LedgerLocation.PostgreSql at, LedgerOptions options, Func<NpgsqlConnection, string, Task<bool>> prepare)
    {
        var database = new PostgreSqlDatabase(at, options);
        try
        {
            await using var connection = await database._source.OpenConnectionAsync();
            database.IsOfPresentForm = await prepare(connection, at.Name);
            return database;
        }
        catch (Exception e)
        {
            await database.DisposeAsync();
            if (PostgreSqlFailures.Explain(e, at.Name, options.LockWait) is { } failure) throw failure;
            throw;
        }
    }
}
