using System.Security.Cryptography;
using FindingRules.Ledger;
using FindingRules.Ledger.Records;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace FindingRules.Service.Tests.Hosting;

/// <summary>A place for one ledger, empty at first and gone at the end; it may outlive the service, to be opened again.</summary>
internal sealed class LedgerPlace : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("findingrules-records-").FullName;
    private readonly string? _schema;

    public LedgerPlace(Store store = Store.Sqlite)
    {
        _schema = store == Store.PostgreSql ? $"s{RandomNumberGenerator.GetHexString(16, true)}" : null;
        Name = _schema is null
            ? PathOf("ledger.db")
            : $"postgresql:{new NpgsqlConnectionStringBuilder(PostgreSql) { SearchPath = _schema }.ConnectionString}";
        Location = _schema is null ? new LedgerLocation.SqliteFile(Name) : new LedgerLocation.PostgreSql(Name["postgresql:".Length..]);
    }

    public static string? PostgreSql { get; } = Environment.GetEnvironmentVariable("FINDINGRULES_POSTGRES");

    public string Name { get; }

    public LedgerLocation Location { get; }

    public string KeyFile => PathOf("ledger.key");

    public string PathOf(string name) => Path.Combine(_folder, name);

    public Task<RecordLedger> OpenAsync() => RecordLedger.OpenAsync(Location, new LedgerOptions { KeyFile = KeyFile });

    public void Dispose()
    {
        if (_schema is not null)
        {
            using var source = NpgsqlDataSource.Create(PostgreSql!);
            using var drop = source.CreateCommand($"DROP SCHEMA IF EXISTS {_schema} CASCADE");
            drop.ExecuteNonQuery();
        }
        SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }
}

internal static class LedgerCounting
{
    /// <summary>Readings only: that the invented pack withdraws a rule is a record as well.</summary>
    public static async Task<int> CountReadingsAsync(this RecordLedger ledger)
    {
        var count = 0;
        await foreach (var record in ledger.ExportAsync())
            if (record.Kind == RecordKind.Reading) count++;
        return count;
    }
}
