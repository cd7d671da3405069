using FindingRules.Testing;
using Xunit;

namespace FindingRules.Cli.Tests;

public sealed class UsageTests
{
    public static TheoryData<string, string> Mistakes => new()
    {
        { "FR0010", "raed pack study.json" },
        { "FR0010", "frobnicate" },
        { "FR0011", "read pack study.json --ouput json" },
        { "FR0011", "read pack study.json -x" },
        { "FR0010", "ledger verfy ledger.db" },
        { "FR0011", "ledger verify ledger.db --haed head.json" },
        { "FR0011", "--vresion" },
        { "FR0012", "read pack" },
        { "FR0012", "review" },
        { "FR0012", "trace pack" },
        { "FR0012", "ledger verify" },
        { "FR0012", "ledger recall ledger.db" },
        { "FR0013", "read pack study.json --output" },
        { "FR0015", "review pack study.json" },
        { "FR0015", "code FR3001 FR3002" },
        { "FR0015", "ledger export ledger.db other.db" },
        { "FR0020", "" },
        { "FR0020", "ledger" },
        { "FR0021", "read pack study.json --output jsn" },
        { "FR0021", "review pack --fail-on doubts" },
        { "FR0023", "ledger head ledger.db --size all" },
        { "FR6055", "trace pack study.json --again" },
        { "FR0022", "read pack study.json --output text --output json" },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void A_mistake_is_told_and_nothing_is_done(string code, string line)
    {
        var run = Run(line);
        Assert.Equal((ExitCode.NotDone, ""), (run.Code, run.Out));
        Assert.Contains($"  error {code}  ", run.Error, StringComparison.Ordinal);
        Assert.StartsWith("command line:1:", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void All_mistakes_as_they_are_shown() => Snapshot.Match(string.Join(
        '\n', Mistakes.Select(row => (string)row[1]).Select(line => $"$ findingrules {line}\n{Run(line).Error}")));

    [Fact]
    public void A_file_whose_name_begins_with_a_hyphen_comes_after_two()
    {
        var run = CommandRun.Of("read", CommandRun.ExamplePack, "--", "--study.json");
        Assert.Contains("FR0002", run.Error, StringComparison.Ordinal);
    }

    private static CommandRun Run(string line) => CommandRun.Of(line.Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
