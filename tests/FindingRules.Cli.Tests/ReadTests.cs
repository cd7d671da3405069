using System.Text.Json;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Cli.Tests;

public sealed class ReadTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_reading_for_a_person()
    {
        var run = Read(Write("study.json", Studies.FullThickness));
        Assert.Equal((ExitCode.Fine, ""), (run.Code, run.Error));
        Assert.All(run.Out.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
        Snapshot.Match(WithoutDigest(run.Out));
    }

    [Fact]
    public void A_study_that_is_wrong_has_no_reading_and_a_message()
    {
        var run = Read(Write("study.json", Studies.Misspelt));
        Assert.Equal(ExitCode.Wrong, run.Code);
        Assert.StartsWith("NO READING for ", run.Out, StringComparison.Ordinal);
        Assert.Contains("did you mean `subluxed`?", run.Error, StringComparison.Ordinal);
        Assert.Contains("At: /subjects/0/findings/position", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void One_reading_as_json_is_printed_over_several_lines()
    {
        var run = Read(Write("study.json", Studies.Subluxed), "--output", "json");
        Assert.StartsWith("{\n  \"pack\": {\n", run.Out, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(run.Out);
        Assert.Equal("evaluate right subscapularis", json.RootElement.GetProperty("nextSteps")[0].GetProperty("step").GetString());
    }

    [Fact]
    public void Many_studies_give_one_answer_a_line_in_their_order_and_a_wrong_one_spoils_none()
    {
        var lines = Write("march.ndjson", $"{Studies.Subluxed}\n\n{Studies.Misspelt}\nnonsense\n{Studies.Normal}");
        var run = Read(lines, Write("one.json", Studies.FullThickness), "--output", "json");
        Assert.Equal(ExitCode.Wrong, run.Code);
        var answers = run.Out.TrimEnd('\n').Split('\n').Select(l => JsonDocument.Parse(l).RootElement).ToArray();
        Assert.Equal(["S-1", "march.ndjson:3", "march.ndjson:4", "S-2", "S-7F3K"], answers.Select(Name));
        Assert.Equal(3, answers[1].GetProperty("messages")[0].GetProperty("line").GetInt32());
        Assert.EndsWith("5 studies, 2 of them WITHOUT A READING\n", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Many_readings_for_a_person_are_kept_apart()
    {
        var run = Read(Write("march.ndjson", $"{Studies.Subluxed}\n{Studies.Misspelt}\n{Studies.Normal}\n"));
        var parts = run.Out.Split(new string('=', 100));
        Assert.Equal(3, parts.Length);
        Assert.StartsWith("Impression for study S-1,", parts[0], StringComparison.Ordinal);
        Assert.StartsWith("\nNO READING for ", parts[1], StringComparison.Ordinal);
        Assert.StartsWith("\nImpression for study S-2,", parts[2], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Studies.FullThickness, "S-7F3K")]
    [InlineData(Studies.Subluxed, "S-1")]
    [InlineData(Studies.Subluxed + "\n" + Studies.Normal, "S-1 S-2")]
    [InlineData("\n\n" + Studies.Subluxed + "\r\n\r\n" + Studies.Normal + "\r\n", "S-1 S-2")]
    [InlineData("{ \"study\": \n" + Studies.Normal, "standard input:1 S-2")]
    public void Standard_input_is_one_document_or_one_study_a_line(string input, string answers)
    {
        var run = CommandRun.WithInput(input, "read", CommandRun.ExamplePack, "-", "--output", "json");
        Assert.Equal(answers, string.Join(' ', Values(run.Out).Select(Name)));
    }

    [Fact]
    public void A_file_of_another_name_is_looked_at() =>
        Assert.Contains("S-2", Read(Write("export", $"{Studies.Subluxed}\n{Studies.Normal}")).Out, StringComparison.Ordinal);

    [Theory]
    [InlineData("")]
    [InlineData(" \n\n")]
    public void An_empty_input_is_a_message_and_no_reading(string input)
    {
        var run = CommandRun.WithInput(input, "read", CommandRun.ExamplePack, "-");
        Assert.Equal(ExitCode.Wrong, run.Code);
        Assert.StartsWith("NO READING for standard input", run.Out, StringComparison.Ordinal);
        Assert.Contains("FR0018", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_is_too_long_does_not_spoil_the_next()
    {
        var run = Read(Write("march.ndjson", $"{{\"study\": \"{new string('x', 1_100_000)}\"}}\n{Studies.Normal}\n"), "--output", "json");
        Assert.Equal(["march.ndjson:1", "S-2"], Values(run.Out).Select(Name));
        Assert.Contains("FR0019", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Bytes_that_are_no_text_are_told_with_their_place()
    {
        var run = CommandRun.WithInput([.. "{ \"study\": \""u8, 0xFF, .. "\" }"u8], "read", CommandRun.ExamplePack, "-");
        Assert.Equal(ExitCode.Wrong, run.Code);
        Assert.Contains("byte 12 does not fit", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_study_that_is_not_there_does_not_spoil_the_others()
    {
        var run = Read(Write("study.json", Studies.Normal), Path.Combine(_folder.Path, "stduy.json"));
        Assert.Equal(ExitCode.NotDone, run.Code);
        Assert.Contains("Impression for study S-2", run.Out, StringComparison.Ordinal);
        Assert.Contains("NO READING", run.Out, StringComparison.Ordinal);
        Assert.Contains("did you mean", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_is_no_study() => Assert.Contains("FR0008", Read(_folder.Path).Error, StringComparison.Ordinal);

    [Fact]
    public void A_pack_that_is_not_there_is_told_and_the_answer_says_that_no_study_was_read()
    {
        var run = CommandRun.Of("read", CommandRun.ExamplePack + "s", "study.json");
        Assert.Equal(ExitCode.NotDone, run.Code);
        Assert.Contains("NO READING", run.Out, StringComparison.Ordinal);
        Assert.Contains("FR0002", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pack_with_errors_reads_no_study()
    {
        CopyPack("rules.yaml", text => text.Replace("biceps subluxed", "biceps sublux", StringComparison.Ordinal));
        var run = CommandRun.WithInput(Studies.Normal, "read", _folder.Path, "-", "--output", "json");
        Assert.Equal((ExitCode.Wrong, ""), (run.Code, run.Error));
        using var json = JsonDocument.Parse(run.Out);
        Assert.Equal("the pack has 1 error, so no study was read", json.RootElement.GetProperty("noReading").GetString());
        Assert.Equal("rules.yaml", json.RootElement.GetProperty("messages")[0].GetProperty("file").GetString());
    }

    [Fact]
    public void Progress_is_counted_where_it_is_asked_for()
    {
        var run = Read(Write("march.ndjson", string.Concat(Enumerable.Repeat(Studies.Normal + "\n", 2_100))), "--progress", "--output", "json");
        Assert.Equal("1,000 studies read\n2,000 studies read\n2,100 studies read\n", run.Error);
        Assert.Equal(2_100, run.Out.TrimEnd().Split('\n').Length);
    }

    [Fact]
    public void The_same_study_gives_the_same_bytes() =>
        Assert.Equal(Read(Write("a.json", Studies.FullThickness)).Out, Read(Write("b.json", Studies.FullThickness)).Out);

    private static CommandRun Read(params string[] arguments) => CommandRun.Of(["read", CommandRun.ExamplePack, .. arguments]);

    private string Write(string name, string text) => _folder.Write(name, text);

    private void CopyPack(string changed, Func<string, string> change)
    {
        foreach (var file in Directory.EnumerateFiles(CommandRun.ExamplePack))
            _folder.Write(Path.GetFileName(file), Path.GetFileName(file) == changed ? change(File.ReadAllText(file)) : File.ReadAllText(file));
    }

    private static IEnumerable<JsonElement> Values(string output)
    {
        var bytes = System.Text.Encoding.UTF8.GetBytes(output);
        var values = new List<JsonElement>();
        var reader = new Utf8JsonReader(bytes, new JsonReaderOptions { AllowMultipleValues = true });
        while (reader.Read()) values.Add(JsonElement.ParseValue(ref reader));
        return values;
    }

    private static string Name(JsonElement answer) => answer.TryGetProperty("study", out var study)
        ? study.GetString()!
        : $"{Path.GetFileName(answer.GetProperty("source").GetString())}:{(answer.TryGetProperty("line", out var line) ? line.GetInt32() : 0)}";

    // A change of the example pack that no answer shows should not touch the picture of an answer.
    private static string WithoutDigest(string text) =>
        System.Text.RegularExpressions.Regex.Replace(text, "digest [0-9a-f]{12}", "digest (of the pack)");
}
