using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Rendering;
using FindingRules.Model.Text;
using FindingRules.Output;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Schemas;

/// <summary>What comes back is what its schema says: readings, the statement that there is none, messages.</summary>
public sealed class AnswerSchemaTests
{
    private static readonly SchemaFile Answers = SchemaFile.Of("reading");
    private static readonly CompiledPack Example = ExamplePack.Plain.Compile();

    public static TheoryData<string> Folders() => [.. ExampleStudies.PackFolders];

    [Theory]
    [MemberData(nameof(Folders))]
    public void Every_reading_is_valid(string folder)
    {
        var pack = ExampleStudies.Load(folder);
        var readings = ExampleStudies.Of(folder).Select(s => (s.Name, Json: Read(s.Study, pack))).ToArray();

        Assert.NotEmpty(readings);
        Assert.All(readings, r => Assert.Empty(Answers.Errors(r.Json)));
    }

    [Fact]
    public void Each_sort_of_line_comes_up_in_a_reading_that_was_checked()
    {
        var readings = ExampleStudies.PackFolders
            .SelectMany(folder => ExampleStudies.Of(folder).Select(s => Read(s.Study, ExampleStudies.Load(folder))))
            .ToArray();
        string[] lists = ["suggestions", "nextSteps", "cautions", "held", "unknown", "borderline", "askNext", "notAssessed"];

        Assert.All(lists, list => Assert.Contains(readings, r => r[list]!.AsArray().Count > 0));
    }

    [Theory]
    [InlineData("colour", "\"blue\"")]
    [InlineData("impressionText", null)]
    [InlineData("suggestions", "{}")]
    [InlineData("notice", "\"Trust the machine.\"")]
    public void A_broken_reading_is_refused(string member, string? value)
    {
        var reading = Read(ExampleStudies.Of("tests/packs/example").First().Study, Example);
        reading.Remove(member);
        if (value is not null) reading[member] = JsonNode.Parse(value);

        Assert.NotEmpty(Answers.Errors(reading));
    }

    [Fact]
    public void The_statement_that_there_is_no_reading_is_valid()
    {
        var messages = Example.Read(new SourceText("study.json", """{ "study": "S-1", "subjects": [{ "structure": "supraspinatu" }] }""")).Messages;
        var json = JsonNode.Parse(ReadingJson.NoReadingToBytes(new NoReading("the study has 1 error", "study.json", 3, messages)).Span)!;

        Assert.NotEmpty(messages);
        Assert.Empty(SchemaFile.Of("no-reading").Errors(json));
    }

    [Theory]
    [InlineData("noReading", null)]
    [InlineData("line", "0")]
    [InlineData("suggestions", "[]")]
    public void A_broken_statement_that_there_is_none_is_refused(string member, string? value)
    {
        var json = JsonNode.Parse(ReadingJson.NoReadingToBytes(new NoReading("the study has 1 error", "study.json", 3, [])).Span)!.AsObject();
        json.Remove(member);
        if (value is not null) json[member] = JsonNode.Parse(value);

        Assert.NotEmpty(SchemaFile.Of("no-reading").Errors(json));
    }

    [Fact]
    public void Messages_are_valid()
    {
        var broken = ExamplePack.Plain.TextOf("rules")
            .Replace("fluid reaches bursal ", "flud reaches bursal ", StringComparison.Ordinal)
            .Replace("CUFF-021\n", "CUFF-020\n", StringComparison.Ordinal);
        var messages = ExamplePack.Plain.Replace("rules", broken).Load().Messages;
        var json = Write(messages);

        Assert.Contains(messages, m => m.Fix is not null);
        Assert.Contains(messages, m => !m.Related.IsEmpty);
        Assert.Empty(SchemaFile.Of("messages").Errors(json));
    }

    [Theory]
    [InlineData("code", "\"3001\"")]
    [InlineData("severity", "\"fatal\"")]
    [InlineData("line", "0")]
    [InlineData("file", null)]
    [InlineData("colour", "\"blue\"")]
    public void A_broken_message_is_refused(string member, string? value)
    {
        var json = Write(ExamplePack.Plain.Replace("rules", "rules: 3\n...\n").Load().Messages);
        var first = json[0]!.AsObject();
        first.Remove(member);
        if (value is not null) first[member] = JsonNode.Parse(value);

        Assert.NotEmpty(SchemaFile.Of("messages").Errors(json));
    }

    private static JsonObject Read(JsonObject study, CompiledPack pack)
    {
        var answer = pack.Read(new SourceText("study.json", study.ToJsonString()));
        Assert.NotNull(answer.Reading);
        return JsonNode.Parse(ReadingJson.ToBytes(answer.Reading).Span)!.AsObject();
    }

    private static JsonArray Write(ImmutableArray<Message> messages)
    {
        using var bytes = new MemoryStream();
        using (var to = new Utf8JsonWriter(bytes)) MessageJson.Write(to, messages);
        return JsonNode.Parse(bytes.ToArray())!.AsArray();
    }
}
