using System.Security.Cryptography;
using FindingRules.Ledger;
using Npgsql;

namespace FindingRules.Testing.Stores;

/// <summary>A place for one ledger, empty at first and gone at the end; it may outlive what opens it.</summary>
public sealed class LedgerPlace : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("findingrules-ledger-").FullName;
    private readonly string? _schema;

    public LedgerPlace(Store store = Store.Sqlite)
    {
        _schema = store == Store.PostgreSql ? $"t{RandomNumberGenerator.GetHexString(16, true)}" : null;
        Name = _schema is null
            ? PathOf("ledger.db")
            : $"postgresql:{new NpgsqlConnectionStringBuilder(PostgreSql) { SearchPath = _schema }.ConnectionString}";
        Location = _schema is null ? new LedgerLocation.SqliteFile(Name) : new LedgerLocation.PostgreSql(Name["postgresql:".Length..]);
    }

    public static string? PostgreSql { get; } = Environment.GetEnvironmentVariable("FINDINGRULES_POSTGRES");

    /// <summary>As it is written in a setting or an option.</summary>
    public string Name { get; }

    public LedgerLocation Location { get; }

    /// <summary>Beside a ledger's file under the name that is taken where none is said.</summary>
    public string KeyFile => PathOf("ledger.db.key");

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
