using System.Security.Cryptography;
using Npgsql;

namespace FindingRules.Ledger.Tests.Stores;

/// <summary>A place for one ledger, empty at first and gone at the end.</summary>
internal sealed class TestPlace : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("ledger-").FullName;
    private readonly string? _schema;

    public TestPlace(Store store)
    {
        _schema = store == Store.PostgreSql ? $"t{RandomNumberGenerator.GetHexString(16, true)}" : null;
        Location = _schema is null
            ? new LedgerLocation.SqliteFile(PathOf("ledger.db"))
            : new LedgerLocation.PostgreSql(new NpgsqlConnectionStringBuilder(PostgreSql) { SearchPath = _schema }.ConnectionString);
    }

    public static string? PostgreSql { get; } = Environment.GetEnvironmentVariable("FINDINGRULES_POSTGRES");

    public LedgerLocation Location { get; }

    public string KeyFile => PathOf("ledger.key");

    public string PathOf(string name) => Path.Combine(_folder, name);

    public Task<RecordLedger> OpenAsync(LedgerOptions? options = null) =>
        RecordLedger.OpenAsync(Location, (options ?? new LedgerOptions()) with { KeyFile = KeyFile });

    public void Dispose()
    {
        if (_schema is not null)
        {
            using var source = NpgsqlDataSource.Create(PostgreSql!);
            using var drop = source.CreateCommand($"DROP SCHEMA IF EXISTS {_schema} CASCADE");
            drop.ExecuteNonQuery();
        }
        Directory.Delete(_folder, recursive: true);
    }
}
