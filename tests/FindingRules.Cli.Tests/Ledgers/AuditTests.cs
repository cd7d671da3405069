using System.Text;
using System.Text.Json.Nodes;
using FindingRules.Ledger;
using FindingRules.Ledger.Records;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Cli.Tests.Ledgers;

/// <summary>What an auditor asks of a ledger with no service at hand.</summary>
public sealed class AuditTests
{
    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_recall_lists_every_reading_that_rested_on_the_rule(Store store)
    {
        using var ledger = await RecordedLedger.MakeAsync(store);
        var run = ledger.Run("recall", "CUFF-010");
        Assert.Equal((ExitCode.Fine, ""), (run.Code, run.Error));
        var lines = run.Out.TrimEnd().Split('\n');
        Assert.Equal(ledger.Ids.AsEnumerable().Reverse(), lines[..^2].Select(l => l.Split("  ")[1]));
        Assert.Equal("3 readings rested on CUFF-010; in 3 it stood in the answer.", lines[^2]);
        Assert.Equal("CUFF-010 was not withdrawn, as far as the ledger knows.", lines[^1]);
        Assert.StartsWith(
            "No reading rested on CUFF-090.\nCUFF-090 of pack example was withdrawn at ", ledger.Run("recall", "CUFF-090").Out,
            StringComparison.Ordinal);
        var (revision, pack) = (ledger.RevisionOf("CUFF-010"), "example");
        Assert.Contains(
            $"3 readings rested on CUFF-010 of revision {revision} with pack {pack}; in 3",
            ledger.Run("recall", "CUFF-010", "--pack", pack, "--revision", revision).Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("FR6058", "--revision", "nonsense", "in the revision `nonsense`")]
    [InlineData("FR6057", "--pack", "exampel", "did you mean `example`?")]
    public async Task A_slip_in_a_revision_or_a_pack_is_no_answer(string code, string option, string slip, string words)
    {
        using var ledger = await RecordedLedger.MakeAsync();
        var run = ledger.Run("recall", "CUFF-010", option, slip);
        Assert.Equal((ExitCode.NotDone, ""), (run.Code, run.Out));
        Assert.Contains(code, run.Error, StringComparison.Ordinal);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    /// <summary>A copy that was made while the service was busy holds an index that lags; nothing may be missed for that.</summary>
    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_recall_and_counts_miss_nothing_that_the_index_has_not_taken_in(Store store)
    {
        using var ledger = await RecordedLedger.MakeAsync(store);
        var (recalled, counted) = (ledger.Run("recall", "CUFF-010").Out, ledger.Run("statistics", "CUFF-010").Out);
        foreach (var indexed in (int[])[0, 2])
        {
            await using (var connection = await ledger.ConnectAsync())
            {
                await using var command = connection.CreateCommand();
                command.CommandText = $"UPDATE watermark SET indexed = {indexed}; DELETE FROM tally; DELETE FROM verdict";
                await command.ExecuteNonQueryAsync();
            }
            Assert.Equal(recalled, ledger.Run("recall", "CUFF-010").Out);
            if (indexed == 0) Assert.Equal(counted, ledger.Run("statistics", "CUFF-010").Out);
        }
    }

    [Fact]
    public async Task A_program_gets_a_recall_a_reading_a_line()
    {
        using var ledger = await RecordedLedger.MakeAsync();
        var lines = ledger.Run("recall", "CUFF-010", "--output", "json").Out.TrimEnd().Split('\n').Select(l => JsonNode.Parse(l)!);
        Assert.Equal(["S-3", "S-2", "S-1"], lines.Select(l => (string)l["study"]!));
    }

    [Fact]
    public async Task What_was_erased_is_counted_in_a_recall_for_nobody_can_tell_any_more()
    {
        using var ledger = await RecordedLedger.MakeAsync();
        ledger.Run("erase", "--record", ledger.Ids[0], "--record", ledger.Ids[1], "--yes");
        var run = ledger.Run("recall", "CUFF-010");
        Assert.Contains("1 reading rested on CUFF-010", run.Out, StringComparison.Ordinal);
        Assert.Equal("2 readings were erased: whether on CUFF-010 or not can no longer be told\n", run.Error);
        ledger.Run("erase", "--record", ledger.Ids[2], "--yes");
        Assert.StartsWith(
            "None of the readings that are left rested on CUFF-010.\n", ledger.Run("recall", "CUFF-010").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("recall")]
    [InlineData("statistics")]
    public async Task A_rule_that_no_pack_had_is_told_so(string command)
    {
        using var ledger = await RecordedLedger.MakeAsync();
        var run = ledger.Run(command, "CUFF-01");
        Assert.Equal((ExitCode.NotDone, ""), (run.Code, run.Out));
        Assert.Contains("FR6054", run.Error, StringComparison.Ordinal);
        Assert.Contains("did you mean `CUFF-010`?", run.Error, StringComparison.Ordinal);
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task Statistics_show_how_a_rule_is_doing(Store store)
    {
        using var ledger = await RecordedLedger.MakeAsync(store);
        var run = ledger.Run("statistics", "CUFF-010");
        Assert.Equal((ExitCode.Fine, ""), (run.Code, run.Error));
        var all = run.Out.Split('\n').Single(l => l.StartsWith("  all ", StringComparison.Ordinal));
        Assert.Equal(["3", "3", "0", "0", "0", "1"], all.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1..]);
        Assert.Contains("  overridden because\n    wording  1\n", run.Out, StringComparison.Ordinal);
        var json = JsonNode.Parse(ledger.Run("statistics", "CUFF-010", "--output", "json").Out)!;
        Assert.Equal(3, (int)json["total"]!["fired"]!);
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task An_export_has_every_record_on_a_line(Store store)
    {
        using var ledger = await RecordedLedger.MakeAsync(store);
        var run = ledger.Run("export", "--progress");
        Assert.Equal((ExitCode.Fine, "5 records exported\n"), (run.Code, run.Error));
        var lines = run.Out.TrimEnd('\n').Split('\n').Select(l => JsonNode.Parse(l)!).ToArray();
        Assert.Equal(["withdrawal", "reading", "reading", "reading", "feedback"], lines.Select(l => (string)l["header"]!["kind"]!));
        Assert.Equal("S-2", (string?)lines[2]["content"]!["study"]);
        Assert.Equal("S-2", (string?)JsonNode.Parse((string)lines[2]["answer"]!)!["study"]);
        Assert.Equal([3, 4], ledger.Run("export", "--from", "3").Out.TrimEnd().Split('\n').Select(l => (int)JsonNode.Parse(l)!["index"]!));
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_recorded_reading_is_explained_and_comes_out_again_byte_for_byte(Store store)
    {
        using var ledger = await RecordedLedger.MakeAsync(store);
        var run = CommandRun.Of("trace", ledger.Ids[0], "--ledger", ledger.Name, "--again");
        Assert.Equal((ExitCode.Fine, ""), (run.Code, run.Error));
        Assert.StartsWith($"Record {ledger.Ids[0]}, number 1 of the ledger\n", run.Out, StringComparison.Ordinal);
        Assert.Contains("the same reading, byte for byte", run.Out, StringComparison.Ordinal);
        Assert.Contains("Why the reading of study S-1 says what it says", run.Out, StringComparison.Ordinal);
        var json = JsonNode.Parse(CommandRun.Of("trace", ledger.Ids[0], "--ledger", ledger.Name, "--again", "--output", "json").Out)!;
        Assert.Equal((ledger.Ids[0], true), ((string)json["record"]!, (bool)json["again"]!["isEqual"]!));
        Assert.Equal("S-1", (string?)json["trace"]!["study"]);
    }

    /// <summary>As of a version of the program that answered otherwise; an answer that was changed afterwards is not told at all.</summary>
    [Fact]
    public async Task A_recorded_reading_that_comes_out_otherwise_is_told_so()
    {
        using var ledger = await RecordedLedger.MakeAsync();
        Guid id;
        await using (var opened = await RecordLedger.OpenAsync(
            new LedgerLocation.SqliteFile(ledger.Name), new LedgerOptions { KeyFile = ledger.KeyFile }))
        {
            var first = (await opened.FindAsync(Guid.Parse(ledger.Ids[0])))!;
            var answer = Encoding.UTF8.GetString(first.Body!.Answer.Span).Replace("definite", "probable", StringComparison.Ordinal);
            id = Assert.IsType<AppendResult.Appended>(await opened.AppendAsync(new ReadingEntry
            {
                Pack = first.Pack!,
                Engine = "0.0.1",
                Actor = first.Actor,
                Study = first.Body.Content,
                Reading = Encoding.UTF8.GetBytes(answer),
                Terms = first.Body.Terms,
            })).Id;
        }
        var run = CommandRun.Of("trace", $"{id}", "--ledger", ledger.Name, "--again");
        Assert.Equal(ExitCode.NotVerified, run.Code);
        Assert.Contains("IT IS ANOTHER READING", run.Out, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Fine, CommandRun.Of("trace", $"{id}", "--ledger", ledger.Name).Code);

        await ledger.ExecuteAsync("UPDATE body SET answer = CAST(replace(CAST(answer AS TEXT), 'definite', 'probable') AS BLOB) WHERE position = 1");
        run = CommandRun.Of("trace", ledger.Ids[0], "--ledger", ledger.Name);
        Assert.Equal((ExitCode.NotDone, ""), (run.Code, run.Out));
        Assert.Contains("FR6009", run.Error, StringComparison.Ordinal);
    }
}
