using System.Text.Json.Nodes;
using FindingRules.Cli.Drill;
using FindingRules.Drill;
using FindingRules.Model.Messages;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Cli.Tests;

public sealed class DrillTests
{
    private static readonly string Shipped = Repository.PathOf("rules", "msk-ultrasound");

    [Fact]
    public void A_session_asks_judges_and_sums_up()
    {
        var run = CommandRun.WithInput("9\n1\n\n\nq\n", "drill", Shipped, "--seed", "7", "--count", "3");
        Assert.Equal((ExitCode.Fine, ""), (run.Code, run.Error));
        Assert.Contains("9 is none of the options.", run.Out, StringComparison.Ordinal);
        Assert.Contains("--- Question 2 of 3", run.Out, StringComparison.Ordinal);
        Assert.Contains("Answered 1: ", run.Out, StringComparison.Ordinal);
        Assert.EndsWith($"{DrillDeck.Invented}\n", run.Out, StringComparison.Ordinal);
        Assert.Equal(run.Out, CommandRun.WithInput("9\n1\n\n\nq\n", "drill", Shipped, "--seed", "7", "--count", "3").Out);
    }

    [Fact]
    public void The_end_of_the_input_ends_it()
    {
        var run = CommandRun.Of("drill", Shipped, "--seed", "7");
        Assert.Equal((ExitCode.Fine, ""), (run.Code, run.Error));
        Assert.Contains("Answered 0: ", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Questions_are_exported_in_both_forms()
    {
        using var folder = new TemporaryFolder();
        foreach (var name in new[] { "q.json", "q.md" })
        {
            var path = Path.Combine(folder.Path, name);
            Assert.Equal(ExitCode.Fine, CommandRun.Of("drill", Shipped, "--seed", "7", "--count", "2", "--export", path).Code);
            Assert.Contains("DEMONSTRATION", File.ReadAllText(path), StringComparison.Ordinal);
            Assert.False(File.Exists(path + WholeFile.Unfinished));
        }
    }

    [Fact]
    public void Progress_is_kept_after_each_answer_and_gone_on_with()
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Path, "p.json");
        string[] call = ["drill", Shipped, "--seed", "7", "--count", "2", "--progress", path, "--learner", "L-07"];
        Assert.Equal(ExitCode.Fine, CommandRun.WithInput("1\n\n", call).Code);
        Assert.Equal(ExitCode.Fine, CommandRun.WithInput("1\n\n", call).Code);
        var kept = JsonNode.Parse(File.ReadAllText(path))!;
        Assert.Equal((2, "L-07"), ((int)kept["sessions"]!, (string)kept["learner"]!));
    }

    [Fact]
    public void What_a_kill_left_unfinished_harms_nothing()
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Path, "p.json");
        string[] call = ["drill", Shipped, "--seed", "7", "--count", "1", "--progress", path];
        CommandRun.WithInput("1\n\n", call);
        var before = File.ReadAllText(path);
        // As it is when the process dies in the middle of writing: half a file beside the whole one.
        File.WriteAllText(path + WholeFile.Unfinished, before[..(before.Length / 2)]);
        Assert.Equal(before, File.ReadAllText(path));
        Assert.Equal(ExitCode.Fine, CommandRun.WithInput("1\n\n", call).Code);
        Assert.Equal(2, (int)JsonNode.Parse(File.ReadAllText(path))!["sessions"]!);
        Assert.False(File.Exists(path + WholeFile.Unfinished));
    }

    [Theory]
    [InlineData("not json", "FR8107")]
    [InlineData("""{ "pack": "other" }""", "FR8108")]
    [InlineData("""{ "pack": "msk-ultrasound", "learner": "L-08" }""", "FR8108")]
    public void A_file_that_is_not_this_learners_progress_is_left_alone(string text, string code)
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("p.json", text);
        var run = CommandRun.WithInput("1\n\n", "drill", Shipped, "--seed", "7", "--progress", path, "--learner", "L-07");
        Assert.Equal((ExitCode.NotDone, text), (run.Code, File.ReadAllText(path)));
        Assert.Contains(code, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--count", "0", "FR8106")]
    [InlineData("--seed", "x", "FR8106")]
    [InlineData("--learner", "somebody", "FR8109")]
    [InlineData("--export", "questions.txt", "FR8110")]
    [InlineData("--export", "no/such/folder/questions.md", "FR8111")]
    public void A_mistake_is_told(string option, string value, string code)
    {
        var run = CommandRun.Of("drill", Shipped, option, value);
        Assert.Equal(ExitCode.NotDone, run.Code);
        Assert.Contains(code, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_cannot_be_written_is_told()
    {
        using var folder = new TemporaryFolder();
        var messages = new MessageBag();
        Assert.False(WholeFile.Write(Path.Combine(folder.Path, "no", "p.json"), [1], messages));
        Assert.Equal("FR8111", Assert.Single(messages.Sorted()).Code);
    }
}
