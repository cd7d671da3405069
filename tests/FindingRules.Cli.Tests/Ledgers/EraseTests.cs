using System.Text.Json.Nodes;
using FindingRules.Testing.Stores;
using Xunit;

namespace FindingRules.Cli.Tests.Ledgers;

public sealed class EraseTests
{
    [Theory, OnSqlite, OnPostgreSql]
    public async Task Nothing_is_erased_until_it_is_meant(Store store)
    {
        using var ledger = await RecordedLedger.MakeAsync(store);
        Assert.Equal("4 bodies would be erased. Nothing was; --yes erases.\n", ledger.Run("erase", "--older-than", "0").Out);
        Assert.Equal("0 bodies would be erased. Nothing was; --yes erases.\n", ledger.Run("erase", "--older-than", "1").Out);
        Assert.Equal("1 body would be erased. Nothing was; --yes erases.\n", ledger.Run("erase", "--record", ledger.Ids[0]).Out);
        Assert.Equal("2 bodies would be erased. Nothing was; --yes erases.\n", ledger.Run("erase", "--record", ledger.Ids[1]).Out);
        Assert.Equal(
            "2 bodies would be erased. Nothing was; --yes erases.\n",
            ledger.Run("erase", "--record", ledger.Ids[1], "--record", ledger.Feedback, "--record", ledger.Ids[1]).Out);
        Assert.DoesNotContain("\"content\":null", ledger.Run("export").Out, StringComparison.Ordinal);

        var run = ledger.Run("erase", "--older-than", "0", "--yes", "--actor", "archive", "--ledger-key", ledger.KeyFile);
        Assert.Equal((ExitCode.Fine, ""), (run.Code, run.Error));
        Assert.StartsWith("4 bodies erased; the record that says so: ", run.Out, StringComparison.Ordinal);
        var lines = ledger.Run("export").Out.TrimEnd().Split('\n').Select(l => JsonNode.Parse(l)!).ToArray();
        Assert.Equal([false, true, true, true, true, false], lines.Select(l => l["content"] is null));
        Assert.Equal("archive", (string?)lines[5]["header"]!["actor"]);
        Assert.Equal("""{"reason":"retention","records":[[1,4]]}""", lines[5]["content"]!.ToJsonString());
        Assert.Equal(
            "There was nothing to erase.\n",
            ledger.Run("erase", "--older-than", "0", "--yes", "--ledger-key", ledger.KeyFile).Out);
        Assert.Equal("0 bodies would be erased. Nothing was; --yes erases.\n", ledger.Run("erase", "--record", ledger.Ids[0]).Out);
    }

    [Theory]
    [InlineData("FR6053", "--yes")]
    [InlineData("FR6053", "--older-than 1 --record 0198c5a0-7d3e-7c41-9a55-6f2f0d4b8e11")]
    [InlineData("FR6050", "--record S-1 --yes")]
    [InlineData("FR7052", "--record 0198c5a0-7d3e-7c41-9a55-6f2f0d4b8e11")]
    [InlineData("FR7052", "--record 0198c5a0-7d3e-7c41-9a55-6f2f0d4b8e11 --yes")]
    [InlineData("FR0023", "--older-than soon --yes")]
    public async Task What_is_not_clear_erases_nothing(string code, string options)
    {
        using var ledger = await RecordedLedger.MakeAsync();
        var run = ledger.Run(["erase", .. options.Split(' ')]);
        Assert.Equal((ExitCode.NotDone, ""), (run.Code, run.Out));
        Assert.Contains($"  error {code}  ", run.Error, StringComparison.Ordinal);
        Assert.Equal(5, ledger.Run("export").Out.TrimEnd().Split('\n').Length);
    }
}
