using System.Text.Json;
using Xunit;

namespace FindingRules.Cli.Tests;

public sealed class ExplainTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("Why the reading of study S-7F3K says what it says", "trace")]
    [InlineData("CUFF-010 for the right supraspinatus tendon in study S-7F3K", "read", "--why", "CUFF-010", "--subject", "right supraspinatus")]
    [InlineData("CUFF-020 for the right supraspinatus tendon in study S-7F3K", "read", "--why-not", "CUFF-020", "--subject", "right supraspinatus")]
    [InlineData("What would take back what the reading of study S-7F3K says", "read", "--what-if")]
    [InlineData("What the missing findings of study S-7F3K would lead to", "read", "--ask-next")]
    public void A_question_is_answered_in_words(string start, string command, params string[] options)
    {
        var run = Ask(Studies.FullThickness, command, options);
        Assert.Equal((ExitCode.Fine, ""), (run.Code, run.Error));
        Assert.StartsWith(start, run.Out, StringComparison.Ordinal);
        Assert.EndsWith("decide.\n", run.Out, StringComparison.Ordinal);
        Assert.All(run.Out.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
    }

    [Fact]
    public void A_program_gets_the_explanation_as_json()
    {
        var run = Ask(Studies.FullThickness, "read", "--why-not", "CUFF-020", "--subject", "right supraspinatus", "--output", "json");
        using var json = JsonDocument.Parse(run.Out);
        Assert.Equal("superior", json.RootElement.GetProperty("whyNot")[0].GetProperty("obstacle").GetProperty("sort").GetString());
    }

    [Theory]
    [InlineData("FR8001", ExitCode.Wrong, "--why", "CUFF-01")]
    [InlineData("FR8003", ExitCode.Wrong, "--why-not", "CUFF-010", "--subject", "left supraspinatus")]
    [InlineData("FR8006", ExitCode.NotDone, "--what-if", "--subject", "right supraspinatus")]
    [InlineData("FR8007", ExitCode.NotDone, "--why", "CUFF-010", "--what-if")]
    [InlineData("FR8007", ExitCode.NotDone, "--why", "CUFF-010", "--why-not", "CUFF-010")]
    public void A_question_that_cannot_be_answered_is_told_with_its_code(string code, int exit, params string[] options)
    {
        var run = Ask(Studies.FullThickness, "read", options);
        Assert.Equal(exit, run.Code);
        Assert.Contains(code, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_study_of_many_is_explained_and_a_wrong_one_spoils_none()
    {
        var run = CommandRun.Of("trace", CommandRun.ExamplePack, Write("march.ndjson", $"{Studies.Subluxed}\n{Studies.Misspelt}\n{Studies.Normal}\n"));
        Assert.Equal(ExitCode.Wrong, run.Code);
        var parts = run.Out.Split(new string('=', 100));
        Assert.Equal(3, parts.Length);
        Assert.Contains("NO READING for ", parts[1], StringComparison.Ordinal);
    }

    private CommandRun Ask(string study, string command, params string[] options) =>
        CommandRun.Of([command, CommandRun.ExamplePack, Write("study.json", study), .. options]);

    private string Write(string name, string text) => _folder.Write(name, text);
}
