using System.Text;
using System.Text.Json.Nodes;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Cli.Tests.Ledgers;

public sealed class VerifyTests
{
    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_ledger_that_nobody_touched_verifies_against_its_head(Store store)
    {
        using var ledger = await RecordedLedger.MakeAsync(store);
        var head = ledger.KeepHead();
        File.WriteAllText(ledger.PathOf("ledger.pem"), ledger.PublicKey);
        var run = ledger.Run("verify", "--head", head, "--key", ledger.PathOf("ledger.pem"));
        Assert.Equal((ExitCode.Fine, ""), (run.Code, run.Error));
        Assert.Contains("  the tree head of ", run.Out, StringComparison.Ordinal);
        Assert.Contains("was signed for 5 records, the first here, unchanged", run.Out, StringComparison.Ordinal);
        Assert.EndsWith("\nVERIFIED.\n", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_head_it_is_said_how_little_that_shows()
    {
        using var ledger = await RecordedLedger.MakeAsync();
        var run = ledger.Run("verify");
        Assert.Equal(ExitCode.Fine, run.Code);
        Assert.Contains("No tree head was given", run.Out, StringComparison.Ordinal);
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task A_changed_record_is_named(Store store)
    {
        using var ledger = await RecordedLedger.MakeAsync(store);
        var head = ledger.KeepHead();
        var changed = store == Store.Sqlite
            ? "CAST(replace(CAST(answer AS TEXT), 'full-thickness', 'full-thicknesz') AS BLOB)"
            : "convert_to(replace(convert_from(answer, 'UTF8'), 'full-thickness', 'full-thicknesz'), 'UTF8')";
        await ledger.ExecuteAsync($"UPDATE body SET answer = {changed} WHERE position = 2");
        var run = ledger.Run("verify", "--head", head);
        Assert.Equal(ExitCode.NotVerified, run.Code);
        Assert.Contains("  error FR6022  the body of record 2 was changed", run.Error, StringComparison.Ordinal);
        Assert.EndsWith("DOES NOT VERIFY: 1 problem.\n", run.Out, StringComparison.Ordinal);
    }

    /// <summary>Not by SQL: a byte of the file itself.</summary>
    [Fact]
    public async Task A_byte_of_the_file_that_is_turned_over_is_found()
    {
        using var ledger = await RecordedLedger.MakeAsync();
        var head = ledger.KeepHead();
        var bytes = await File.ReadAllBytesAsync(ledger.Name);
        var at = bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes("\"tear-length\":\"29.5 mm\""));
        Assert.True(at > 0);
        bytes[at + 16] ^= 1;
        await File.WriteAllBytesAsync(ledger.Name, bytes);
        var run = ledger.Run("verify", "--head", head);
        Assert.Equal(ExitCode.NotVerified, run.Code);
        Assert.Contains("FR6022", run.Error, StringComparison.Ordinal);
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task Records_that_were_cut_off_are_missed(Store store)
    {
        using var ledger = await RecordedLedger.MakeAsync(store);
        var (early, head) = (ledger.PathOf("early.json"), ledger.KeepHead());
        await File.WriteAllTextAsync(early, ledger.Run("head", "--ledger-key", ledger.KeyFile, "--size", "2").Out);
        await ledger.ExecuteAsync("DELETE FROM body WHERE position > 2; DELETE FROM record WHERE position > 2");
        var run = ledger.Run("verify", "--head", head);
        Assert.Equal(ExitCode.NotVerified, run.Code);
        Assert.Contains("FR6027  there are 3 records, and the tree head was signed for 5", run.Error, StringComparison.Ordinal);
        // Whoever cuts off the end and mends what the store says of itself is seen only against a head that covers the end.
        Assert.DoesNotContain("FR6024", ledger.Run("verify", "--head", early).Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_head_or_key_of_another_ledger_vouches_for_nothing()
    {
        using var ledger = await RecordedLedger.MakeAsync();
        using var other = await RecordedLedger.MakeAsync();
        File.WriteAllText(other.PathOf("other.pem"), other.PublicKey);
        var run = ledger.Run("verify", "--head", other.KeepHead(), "--key", other.PathOf("other.pem"), "--output", "json");
        Assert.Equal(ExitCode.NotVerified, run.Code);
        var json = JsonNode.Parse(run.Out)!;
        Assert.Equal(["FR6035", "FR6026"], json["messages"]!.AsArray().Select(m => (string)m!["code"]!));
        Assert.Equal((false, 0), ((bool)json["verified"]!, (int)json["covered"]!));
        var forged = ledger.PathOf("forged.json");
        var head = JsonNode.Parse(File.ReadAllText(ledger.KeepHead()))!;
        head["size"] = 4;
        File.WriteAllText(forged, head.ToJsonString());
        Assert.Contains("FR6025", ledger.Run("verify", "--head", forged).Error, StringComparison.Ordinal);
    }

    [Theory, OnSqlite, OnPostgreSql]
    public async Task What_was_erased_is_told_from_what_was_taken_away(Store store)
    {
        using var ledger = await RecordedLedger.MakeAsync(store);
        var head = ledger.KeepHead();
        Assert.Equal(ExitCode.Fine, ledger.Run("erase", "--record", ledger.Ids[0], "--yes", "--ledger-key", ledger.KeyFile).Code);
        var run = ledger.Run("verify", "--head", head);
        Assert.Equal((ExitCode.Fine, ""), (run.Code, run.Error));
        Assert.Contains("1 body erased, and a record says so", run.Out, StringComparison.Ordinal);
        Assert.Contains("1 body of covered records were erased by records after the head: nothing vouches", run.Out, StringComparison.Ordinal);
        Assert.EndsWith("\nVERIFIED, but for the erasure of 1 body, which nothing vouches for.\n", run.Out, StringComparison.Ordinal);
        Assert.EndsWith("\nVERIFIED.\n", ledger.Run("verify", "--head", ledger.KeepHead()).Out, StringComparison.Ordinal);
        Assert.Contains("1 record after it", run.Out, StringComparison.Ordinal);

        await ledger.ExecuteAsync("DELETE FROM body WHERE position = 2");
        run = ledger.Run("verify", "--head", head);
        Assert.Equal(ExitCode.NotVerified, run.Code);
        Assert.Contains("FR6023  the body of record 2 is gone, and no erasure speaks of it", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_whose_pages_are_broken_does_not_verify()
    {
        using var ledger = await RecordedLedger.MakeAsync();
        var head = ledger.KeepHead();
        var bytes = await File.ReadAllBytesAsync(ledger.Name);
        bytes.AsSpan(8192, bytes.Length - 8192).Fill(0xAA);
        await File.WriteAllBytesAsync(ledger.Name, bytes);
        var run = ledger.Run("verify", "--head", head);
        Assert.Equal(ExitCode.NotVerified, run.Code);
        Assert.Contains("FR6009", run.Error, StringComparison.Ordinal);
    }
}
