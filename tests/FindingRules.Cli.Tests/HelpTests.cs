using FindingRules.Cli.Commands;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Cli.Tests;

public sealed class HelpTests
{
    public static TheoryData<string> Commands =>
    [
        "", "read", "trace", "review", "drill", "serve", "code", "ledger", "ledger verify", "ledger head", "ledger export",
        "ledger recall", "ledger statistics", "ledger erase",
    ];

    [Theory]
    [MemberData(nameof(Commands))]
    public void Help_of_a_command(string command)
    {
        var run = CommandRun.Of([.. Words(command), "--help"]);
        Assert.Equal((ExitCode.Fine, ""), (run.Code, run.Error));
        Assert.All(run.Out.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
        Snapshot.Match(run.Out, command.Length == 0 ? "all" : command.Replace(' ', '-'));
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public void Help_names_every_argument_option_and_command(string name)
    {
        using var terminal = new Terminal { Input = Stream.Null, Out = TextWriter.Null, Error = TextWriter.Null };
        var all = AllCommands.Create(terminal);
        var command = Words(name).Aggregate(all, (within, word) => within.Subcommands.Single(c => c.Name == word));
        var help = CommandRun.Of([.. Words(name), "--help"]).Out;
        Assert.All(command.Arguments, a => Assert.Contains(a.Name, help, StringComparison.Ordinal));
        Assert.All(command.Subcommands, c => Assert.Contains($"findingrules {$"{name} {c.Name}".TrimStart()}", help, StringComparison.Ordinal));
        Assert.All(command.Options.Where(o => o.Name != "--help"), o => Assert.Contains(o.Name, help, StringComparison.Ordinal));
    }

    [Fact]
    public void Help_asked_for_beside_a_mistake_is_given() =>
        Assert.Equal(ExitCode.Fine, CommandRun.Of("read", "--help").Code);

    [Fact]
    public void The_version_is_told() => Assert.Matches(@"^findingrules \d+\.\d+\.\d+\n$", CommandRun.Of("--version").Out);

    private static string[] Words(string command) => command.Split(' ', StringSplitOptions.RemoveEmptyEntries);
}
