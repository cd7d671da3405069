using System.Text.RegularExpressions;
using FindingRules.Cli.Tests.Ledgers;
using FindingRules.Service;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Cli.Tests;

/// <summary>The commands that README shows do what it says.</summary>
public sealed partial class ReadmeTests
{
    private static IEnumerable<string> Listed => Row().Matches(Repository.ReadText(FencedBlock.Path)).Select(m => m.Groups["command"].Value);

    public static TheoryData<string> Commands() => [.. Listed];

    [Fact]
    public void The_first_command_prints_the_shown_reading()
    {
        var line = FencedBlock.The("sh").Text.Split('\n')[0];
        var words = line[(line.IndexOf(" -- ", StringComparison.Ordinal) + 4)..].Split(' ');

        var run = CommandRun.Of([words[0], .. words[1..].Select(path => Repository.PathOf(path.Split('/')))]);

        Assert.Equal(0, run.Code);
        FencedBlock.The("text reading").MatchInPieces(run.Out);
    }

    /// <summary>In a folder that holds the ledger that a service left, with the redirections of a shell.</summary>
    [Fact]
    public async Task The_commands_of_an_auditor_do_their_work()
    {
        using var ledger = await RecordedLedger.MakeAsync();
        foreach (var line in FencedBlock.The("sh audit").Text.TrimEnd().Split('\n'))
        {
            var parts = line.Split(" > ");
            var words = parts[0].Split(' ')[1..].Select(w => w switch
            {
                ServiceOptions.DefaultLedger => ledger.Name,
                _ when w.EndsWith(".json", StringComparison.Ordinal) => ledger.PathOf(w),
                _ => w,
            });
            var run = CommandRun.Of([.. words]);
            Assert.True((run.Code, run.Error) == (ExitCode.Fine, ""), $"{line}\n{run.Error}");
            Assert.NotEmpty(run.Out);
            if (parts.Length > 1) File.WriteAllText(ledger.PathOf(parts[1]), run.Out);
        }
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public void A_listed_command_has_help(string command)
    {
        var run = CommandRun.Of(command, "--help");

        Assert.Equal(0, run.Code);
        Assert.StartsWith($"findingrules {command} ", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_command_is_listed()
    {
        var help = CommandRun.Of("--help").Out;
        var inHelp = HelpLine().Matches(help).Select(m => m.Groups["command"].Value);

        Assert.Equal(inHelp, Listed);
    }

    [Fact]
    public void A_listed_code_has_a_page()
    {
        var codes = Code().Matches(Repository.ReadText(FencedBlock.Path)).Select(m => m.Value).Distinct().ToArray();

        Assert.NotEmpty(codes);
        Assert.All(codes, code => Assert.Equal(0, CommandRun.Of("code", code).Code));
    }

    [GeneratedRegex(@"^\| `findingrules (?<command>[a-z-]+) ", RegexOptions.Multiline)]
    private static partial Regex Row();

    [GeneratedRegex(@"^  findingrules (?<command>[a-z-]+) ", RegexOptions.Multiline)]
    private static partial Regex HelpLine();

    [GeneratedRegex("FR[0-9]{4}")]
    private static partial Regex Code();
}
