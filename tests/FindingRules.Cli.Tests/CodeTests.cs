using FindingRules.Model.Messages;
using Xunit;

namespace FindingRules.Cli.Tests;

public sealed class CodeTests
{
    [Theory]
    [InlineData("FR0002")]
    [InlineData("fr0002")]
    [InlineData("0002")]
    [InlineData("2")]
    public void A_code_gives_its_page(string written)
    {
        var run = CommandRun.Of("code", written);
        Assert.Equal((ExitCode.Fine, ""), (run.Code, run.Error));
        Assert.Equal(MessagePages.Find("FR0002")!.TrimEnd() + "\n", run.Out);
    }

    [Fact]
    public void Without_a_code_all_are_listed_with_their_titles()
    {
        var lines = CommandRun.Of("code").Out.TrimEnd().Split('\n');
        Assert.Equal(MessagePages.Codes, lines.Select(l => l[..6]));
        Assert.Contains("FR0002 no such file or folder", lines);
    }

    [Theory]
    [InlineData("FR002", "FR000")]
    [InlineData("nonsense", "lists them all")]
    public void An_unknown_code_is_told(string written, string help)
    {
        var run = CommandRun.Of("code", written);
        Assert.Equal((ExitCode.NotDone, ""), (run.Code, run.Out));
        Assert.Contains("FR0016", run.Error, StringComparison.Ordinal);
        Assert.Contains(help, run.Error, StringComparison.Ordinal);
    }
}
