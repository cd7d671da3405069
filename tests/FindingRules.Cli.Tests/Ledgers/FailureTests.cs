using FindingRules.Testing.Stores;
using Microsoft.Data.Sqlite;
using Npgsql;
using Xunit;

namespace FindingRules.Cli.Tests.Ledgers;

/// <summary>What stands between an auditor and a ledger is told with a code, and ends with code 1.</summary>
public sealed class FailureTests
{
    private const string NoRecord = "0198c5a0-7d3e-7c41-9a55-6f2f0d4b8e11";

    [Theory]
    [InlineData("verify")]
    [InlineData("head")]
    [InlineData("export")]
    [InlineData("recall", "CUFF-010")]
    [InlineData("statistics", "CUFF-010")]
    [InlineData("erase", "--older-than", "1")]
    [InlineData("erase", "--older-than", "1", "--yes")]
    public void A_ledger_that_is_not_there_is_told_so_and_none_is_begun(params string[] arguments)
    {
        using var folder = new TemporaryFolder();
        var place = Path.Combine(folder.Path, "ledger.db");
        Expect("FR6004", CommandRun.Of(["ledger", arguments[0], place, .. arguments[1..]]));
        Assert.Empty(Directory.GetFiles(folder.Path));
        var text = folder.Write("text.db", new string('x', 5000));
        Expect("FR6007", CommandRun.Of(["ledger", arguments[0], text, .. arguments[1..]]));
    }

    [Theory]
    [InlineData("postgresql:Host=127.0.0.1;Port=1;Username=u;Password=secret;Timeout=3", "FR6005")]
    [InlineData("postgresql:Password=secret", "FR6017")]
    [InlineData("", "FR6017")]
    public void A_server_that_does_not_answer_is_told_so_without_the_password(string place, string code)
    {
        foreach (var arguments in (string[][])[["ledger", "verify", place], ["trace", NoRecord, "--ledger", place]])
        {
            var run = CommandRun.Of(arguments);
            Expect(code, run);
            Assert.DoesNotContain("secret", run.Error, StringComparison.Ordinal);
        }
    }

    [Theory, OnPostgreSql]
    public async Task A_server_that_refuses_is_told_so(Store store)
    {
        using var ledger = await RecordedLedger.MakeAsync(store);
        Expect("FR6004", CommandRun.Of("ledger", "verify", At("Database", "nosuch")));
        Expect("FR6006", CommandRun.Of("ledger", "verify", At("Username", "nosuch")));
        Expect("FR6004", CommandRun.Of("ledger", "verify", At("Search Path", "nosuch")));
        var readOnly = At("Options", "-c default_transaction_read_only=on");
        Assert.Equal(ExitCode.Fine, CommandRun.Of("ledger", "verify", readOnly).Code);
        Expect("FR6002", CommandRun.Of("ledger", "erase", readOnly, "--older-than", "0", "--yes", "--ledger-key", ledger.KeyFile));

        string At(string name, string value) =>
            $"postgresql:{new NpgsqlConnectionStringBuilder(ledger.Name["postgresql:".Length..]) { [name] = value }.ConnectionString}";
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_newer_form_is_refused(Store store)
    {
        using var ledger = await RecordedLedger.MakeAsync(store);
        await ledger.ExecuteAsync(store == Store.Sqlite ? "PRAGMA user_version = 99" : "UPDATE about SET value = '99' WHERE name = 'form'");
        foreach (var command in (string[])["verify", "export"]) Expect("FR6008", ledger.Run(command));
        Expect("FR6008", ledger.Run("head", "--ledger-key", ledger.KeyFile));
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task Another_or_no_signing_key_is_told_so(Store store)
    {
        using var ledger = await RecordedLedger.MakeAsync(store);
        using var other = await RecordedLedger.MakeAsync();
        Expect("FR6010", ledger.Run("head", "--ledger-key", other.KeyFile));
        Expect("FR6012", ledger.Run("head", "--ledger-key", ledger.PathOf("nosuch.key")));
        Assert.False(File.Exists(ledger.PathOf("nosuch.key")));
        Expect("FR6048", ledger.Run("head", "--ledger-key", ledger.KeyFile, "--size", "99"));
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_held_ledger_can_be_read_and_not_written(Store store)
    {
        using var ledger = await RecordedLedger.MakeAsync(store);
        await using var holder = await ledger.ConnectAsync();
        await using var hold = holder.CreateCommand();
        hold.CommandText = holder is SqliteConnection ? "BEGIN IMMEDIATE" : "BEGIN; SELECT * FROM tree FOR UPDATE";
        await hold.ExecuteNonQueryAsync();
        Assert.Equal(ExitCode.Fine, ledger.Run("verify").Code);
        Expect("FR6003", ledger.Run("erase", "--older-than", "0", "--yes", "--ledger-key", ledger.KeyFile));
    }

    [Theory]
    [InlineData("--head", "FR6051")]
    [InlineData("--key", "FR6052")]
    public async Task A_file_that_holds_something_else_is_told_so(string option, string code)
    {
        using var ledger = await RecordedLedger.MakeAsync();
        Expect(code, ledger.Run("verify", option, Path.Combine(CommandRun.ExamplePack, "pack.yaml")));
        Expect("FR0002", ledger.Run("verify", option, ledger.PathOf("nosuch")));
        Expect("FR0003", ledger.Run("verify", option, CommandRun.ExamplePack));
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_record_that_cannot_be_explained_is_told_so(Store store)
    {
        using var ledger = await RecordedLedger.MakeAsync(store);
        ledger.Run("erase", "--record", ledger.Ids[0], "--yes", "--ledger-key", ledger.KeyFile);
        Expect("FR7056", CommandRun.Of("trace", ledger.Ids[0], "--ledger", ledger.Name, "--again"));
        Expect("FR7057", CommandRun.Of("trace", ledger.Feedback, "--ledger", ledger.Name));
        Expect("FR7052", CommandRun.Of("trace", NoRecord, "--ledger", ledger.Name));
        Expect("FR6050", CommandRun.Of("trace", "S-1", "--ledger", ledger.Name));
        Expect("FR0015", CommandRun.Of("trace", NoRecord, "study.json", "--ledger", ledger.Name));
    }

    private static void Expect(string code, CommandRun run)
    {
        Assert.Equal((ExitCode.NotDone, ""), (run.Code, run.Out));
        Assert.Contains($"  error {code}  ", run.Error, StringComparison.Ordinal);
    }
}
