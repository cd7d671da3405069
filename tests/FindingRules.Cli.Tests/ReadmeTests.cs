using System.Text.RegularExpressions;
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
