using System.Diagnostics;
using System.Globalization;
using FindingRules.Ledger;
using FindingRules.Ledger.Searching;
using FindingRules.Ledger.Verifying;
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
            case ["search", var records]:
                await SearchAsync(int.Parse(records, CultureInfo.InvariantCulture));
                return 0;
            default:
                await Console.Error.WriteLineAsync("ledger append [seconds] | ledger search RECORDS");
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

    private static async Task SearchAsync(int records)
    {
        var folder = Directory.CreateTempSubdirectory("ledger-benchmark-").FullName;
        var at = new LedgerLocation.SqliteFile(Path.Combine(folder, "ledger.db"));
        await using (var ledger = await RecordLedger.OpenAsync(at, SearchTimes.Options))
        {
            var watch = Stopwatch.StartNew();
            await SearchTimes.FillAsync(ledger, records);
            Say($"{records} records appended in {watch.Elapsed.TotalSeconds:0} s");
            await ledger.SearchAsync(new LedgerQuery());
            Say($"indexed {watch.Elapsed.TotalSeconds:0} s after the start, {new FileInfo(at.Path).Length / 1_000_000} MB");
            var all = new List<double>();
            foreach (var (name, times) in await SearchTimes.AskAsync(ledger, records, 30))
            {
                Say($"| {name} | {Rate.At(times, 0.5):0.0} | {Rate.At(times, 0.95):0.0} |");
                all.AddRange(times);
            }
            Say($"| all | {Rate.At([.. all.Order()], 0.5):0.0} | {Rate.At([.. all.Order()], 0.95):0.0} |");
            watch.Restart();
            var (lines, most) = (0, 0L);
            await foreach (var _ in ledger.ExportAsync())
                if (++lines % 50_000 == 0)
                    most = Math.Max(most, GC.GetTotalMemory(forceFullCollection: true));
            Say($"{lines} records exported in {watch.Elapsed.TotalSeconds:0} s, at most {most / 1_000_000} MB of live memory on the way");
            watch.Restart();
            var head = await ledger.GetTreeHeadAsync();
            var report = await LedgerVerifier.VerifyAsync(at, head);
            Say($"verified in {watch.Elapsed.TotalSeconds:0} s: {(report.IsSound ? "sound" : "NOT SOUND")}");
        }
        Directory.Delete(folder, recursive: true);
    }

    private static void Say(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));

    private static void Show(string what, Rate rate) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"| {what} | {rate.PerSecond:0} | {rate.MedianMilliseconds:0.0} | {rate.P99Milliseconds:0.0} |"));
}
