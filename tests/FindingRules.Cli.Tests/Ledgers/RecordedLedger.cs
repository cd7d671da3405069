using System.Data.Common;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using FindingRules.Ledger;
using FindingRules.Model.Messages;
using FindingRules.Service;
using FindingRules.Testing.Stores;
using Microsoft.Data.Sqlite;
using Npgsql;
using Xunit;

namespace FindingRules.Cli.Tests.Ledgers;

/// <summary>A ledger as a service leaves it: three readings, of one of which a suggestion was overridden, with one pack.</summary>
internal sealed class RecordedLedger : IDisposable
{
    private readonly LedgerPlace _place;

    private RecordedLedger(LedgerPlace place) => _place = place;

    public string Name => _place.Name;

    public string KeyFile => _place.KeyFile;

    /// <summary>Of the readings, the earliest first.</summary>
    public List<string> Ids { get; } = [];

    public string Feedback { get; private set; } = "";

    public string PublicKey { get; private set; } = "";

    public string PathOf(string name) => _place.PathOf(name);

    public static async Task<RecordedLedger> MakeAsync(Store store = Store.Sqlite)
    {
        var ledger = new RecordedLedger(new LedgerPlace(store));
        var options = new ServiceOptions
        {
            PackFolders = [CommandRun.ExamplePack],
            Urls = ["http://127.0.0.1:0"],
            Ledger = ledger.Name,
            LedgerKey = ledger.KeyFile,
        };
        await using var app = ServiceHost.Build(options, new MessageBag())!;
        await app.StartAsync();
        using var client = new HttpClient { BaseAddress = new Uri(app.Urls.Single()) };
        // Until the pack is in force, and that it withdraws a rule is recorded.
        while ((await client.GetStringAsync("/v1/ledger/tree-head")).Contains("\"size\":0", StringComparison.Ordinal)) await Task.Delay(20);
        while (!(await client.GetAsync("/readyz")).IsSuccessStatusCode) await Task.Delay(20);
        foreach (var key in (string[])["S-1", "S-2", "S-3"]) await ledger.RecordAsync(client, key);
        await ledger.OverrideAsync(client, ledger.Ids[1]);
        ledger.PublicKey = await client.GetStringAsync("/v1/ledger/public-key");
        // Whoever asks waits for the index.
        await client.GetStringAsync("/v1/readings");
        await app.StopAsync();
        return ledger;
    }

    public CommandRun Run(params string[] arguments) => CommandRun.Of(["ledger", arguments[0], Name, .. arguments[1..]]);

    /// <summary>As the first reading names it.</summary>
    public string RevisionOf(string rule)
    {
        var answer = JsonNode.Parse((string)JsonNode.Parse(Run("export", "--from", "1").Out.Split('\n')[0])!["answer"]!)!;
        return answer["suggestions"]!.AsArray().SelectMany(s => s!["rules"]!.AsArray())
            .Where(r => (string?)r!["id"] == rule).Select(r => (string)r!["revision"]!).First();
    }

    /// <summary>The head as it is now, in a file.</summary>
    public string KeepHead()
    {
        var run = Run("head", "--ledger-key", KeyFile);
        Assert.Equal((ExitCode.Fine, ""), (run.Code, run.Error));
        var path = PathOf($"head-{Guid.CreateVersion7()}.json");
        File.WriteAllText(path, run.Out);
        return path;
    }

    public async Task<DbConnection> ConnectAsync()
    {
        DbConnection connection = _place.Location is LedgerLocation.PostgreSql server
            ? new NpgsqlConnection($"{server.ConnectionString};Pooling=false")
            : new SqliteConnection($"Data Source={Name};Pooling=false");
        await connection.OpenAsync();
        return connection;
    }

    /// <summary>As somebody with the rights of the store's owner.</summary>
    public async Task ExecuteAsync(string sql)
    {
        await using var connection = await ConnectAsync();
        await using var command = connection.CreateCommand();
        var isServer = connection is NpgsqlConnection;
        command.CommandText = (isServer
            ? "ALTER TABLE record DISABLE TRIGGER ALL; ALTER TABLE body DISABLE TRIGGER ALL; "
            : "DROP TRIGGER record_stays; DROP TRIGGER record_unchanged; DROP TRIGGER body_unchanged; ") + sql;
        await command.ExecuteNonQueryAsync();
    }

    public void Dispose() => _place.Dispose();

    private async Task RecordAsync(HttpClient client, string key)
    {
        using var study = new StringContent(
            Studies.FullThickness.Replace("S-7F3K", key, StringComparison.Ordinal), Encoding.UTF8, "application/json");
        using var answer = await client.PostAsync("/v1/readings", study);
        Ids.Add(answer.Headers.Location!.ToString().Split('/')[^1]);
    }

    private async Task OverrideAsync(HttpClient client, string reading)
    {
        using var answer = await client.PostAsJsonAsync($"/v1/readings/{reading}/feedback", new
        {
            suggestions = new[] { new { verdict = "overridden", topic = "tear-depth", subject = "right supraspinatus", reason = "wording" } },
        });
        Feedback = (string)JsonNode.Parse(await answer.Content.ReadAsStringAsync())!["id"]!;
    }
}
