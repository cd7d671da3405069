using System.Globalization;
using FindingRules.Ledger;
using Npgsql;

namespace FindingRules.Benchmarks.Ledger;

/// <summary><c>ledger append|search</c>: measures the ledger against its own store, in one run on one machine.</summary>
internal static class LedgerCommand
{
    public static async Task<int> RunAsync(string[] args)
    {
        switch (args)
        {
            case ["append", .. var rest]:
                await AppendAsync(TimeSpan.FromSeconds(rest.Length > 0 ? int.Parse(rest[0], CultureInfo.InvariantCulture) : 10));
                return 0;
            default:
                await Console.Error.WriteLineAsync("ledger append [seconds]");
                return 1;
        }
    }

    private static async Task AppendAsync(TimeSpan length)
    {
        var folder = Directory.CreateTempSubdirectory("ledger-benchmark-").FullName;
        Show("SQLite, raw", RawRate.OfSqlite(Path.Combine(folder, "raw.db"), length));
        await using (var ledger = await RecordLedger.OpenAsync(new LedgerLocation.SqliteFile(Path.Combine(folder, "ledger.db"))))
            Show("SQLite, ledger", await AppendRate.MeasureAsync(ledger, length));
        if (Environment.GetEnvironmentVariable("FINDINGRULES_POSTGRES") is { Length: > 0 } server)
        {
            Show("PostgreSQL, raw", RawRate.OfPostgreSql(server, length));
            var schema = $"benchmark{Environment.ProcessId}";
            var at = new LedgerLocation.PostgreSql(new NpgsqlConnectionStringBuilder(server) { SearchPath = schema }.ConnectionString);
            await using (var ledger = await RecordLedger.OpenAsync(at, new LedgerOptions { KeyFile = Path.Combine(folder, "key") }))
                Show("PostgreSQL, ledger", await AppendRate.MeasureAsync(ledger, length));
            await using var source = NpgsqlDataSource.Create(server);
            await using var drop = source.CreateCommand($"DROP SCHEMA {schema} CASCADE");
            await drop.ExecuteNonQueryAsync();
        }
        Directory.Delete(folder, recursive: true);
    }

    private static void Show(string what, Rate rate) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"| {what} | {rate.PerSecond:0} | {rate.MedianMilliseconds:0.0} | {rate.P99Milliseconds:0.0} |"));
}
