using System.Text.Json;
using Xunit;

namespace FindingRules.Cli.Tests;

public sealed class ReviewTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void The_example_pack_has_no_errors_and_some_doubts()
    {
        var run = CommandRun.Of("review", CommandRun.ExamplePack);
        Assert.Equal(ExitCode.Fine, run.Code);
        Assert.Contains("4 cases: 4 passed, 0 failed", run.Out, StringComparison.Ordinal);
        Assert.Contains("doubt FR4010  no case makes `CUFF-040` true", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Doubts_fail_where_that_is_asked_for() =>
        Assert.Equal(ExitCode.Doubts, CommandRun.Of("review", CommandRun.ExamplePack, "--fail-on", "doubt").Code);

    [Fact]
    public void A_failed_case_shows_what_was_expected_what_came_and_where()
    {
        Copy("cases.yaml", "yields: [CUFF-020, CUFF-021]", "yields: [CUFF-020, CUFF-030]");
        var run = CommandRun.Of("review", _folder.Path);
        Assert.Equal(ExitCode.Wrong, run.Code);
        Assert.Contains("3 passed, 1 failed", run.Out, StringComparison.Ordinal);
        Assert.Contains("failed: CASE-CUFF-010  Fluid from bursa to joint", run.Out, StringComparison.Ordinal);
        Assert.Contains("      yields: [CUFF-020, CUFF-030]\n".Trim(), run.Error, StringComparison.Ordinal);
        Assert.Contains("error FR4001  `CASE-CUFF-010` expects `CUFF-030` to yield; it is ", run.Error, StringComparison.Ordinal);
        Assert.Contains(Path.Combine(_folder.Path, "cases.yaml:14:26"), run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_error_of_a_pack_is_told_and_no_case_is_run()
    {
        Copy("rules.yaml", "biceps subluxed", "biceps sublux");
        var run = CommandRun.Of("review", _folder.Path);
        Assert.Equal(ExitCode.Wrong, run.Code);
        Assert.Equal($"{_folder.Path} could not be read: 1 error. No case was run.\n", run.Out);
        Assert.Contains("biceps sublux →", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void As_json_everything_is_on_standard_output()
    {
        var run = CommandRun.Of("review", CommandRun.ExamplePack, "--output", "json");
        Assert.Equal((ExitCode.Fine, ""), (run.Code, run.Error));
        using var json = JsonDocument.Parse(run.Out);
        var root = json.RootElement;
        Assert.Equal("example", root.GetProperty("pack").GetProperty("name").GetString());
        Assert.Equal(15, root.GetProperty("rules").GetProperty("inForce").GetInt32());
        Assert.Equal(4, root.GetProperty("cases").EnumerateArray().Count(c => c.GetProperty("passed").GetBoolean()));
        Assert.Equal(
            root.GetProperty("rules").GetProperty("withoutCase").GetArrayLength(),
            root.GetProperty("messages").EnumerateArray().Count(m => m.GetProperty("code").GetString() == "FR4010"));
    }

    [Fact]
    public void As_json_a_pack_that_cannot_be_read_has_its_messages_only()
    {
        Copy("rules.yaml", "biceps subluxed", "biceps sublux");
        using var json = JsonDocument.Parse(CommandRun.Of("review", _folder.Path, "--output", "json").Out);
        Assert.False(json.RootElement.TryGetProperty("pack", out _));
        Assert.Equal(1, json.RootElement.GetProperty("messages").GetArrayLength());
    }

    private void Copy(string changed, string before, string after)
    {
        foreach (var file in Directory.EnumerateFiles(CommandRun.ExamplePack))
        {
            var text = File.ReadAllText(file);
            if (Path.GetFileName(file) == changed)
            {
                Assert.Contains(before, text, StringComparison.Ordinal);
                text = text.Replace(before, after, StringComparison.Ordinal);
            }
            _folder.Write(Path.GetFileName(file), text);
        }
    }
}
