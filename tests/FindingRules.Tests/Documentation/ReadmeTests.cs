using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;
using FindingRules.Output;
using FindingRules.Testing;
using FindingRules.Tests.Schemas;
using Xunit;

namespace FindingRules.Tests.Documentation;

/// <summary>README says what is so: each block of it is run, read or compared.</summary>
public sealed partial class ReadmeTests
{
    private const string Language = "rule ";
    private const string FileOfExample = "yaml ";

    private static readonly string[] OtherSorts =
        ["sh", "sh service", "sh audit", "json study", "json study-forms", "text reading", "text message", "yaml wrong", "yaml part vocabulary"];

    public static TheoryData<string, string> ExampleFiles()
    {
        var data = new TheoryData<string, string>();
        foreach (var block in FencedBlock.All.Where(b => !OtherSorts.Contains(b.Sort) && b.Sort.StartsWith(FileOfExample, StringComparison.Ordinal)))
            data.Add(block.Sort[FileOfExample.Length..], block.Text);
        return data;
    }

    [Fact]
    public void Every_block_is_of_a_sort_that_is_tested() => Assert.Empty(FencedBlock.All.Where(b =>
        !OtherSorts.Contains(b.Sort)
        && !b.Sort.StartsWith(Language, StringComparison.Ordinal)
        && !ExamplePack.Kinds.Any(k => b.Sort == FileOfExample + k)));

    [Fact]
    public void It_stays_short_enough_to_be_read() => Assert.InRange(File.ReadLines(Repository.PathOf("README.md")).Count(), 100, 400);

    [Fact]
    public void The_first_block_holds_the_two_commands() => Assert.Equal(
        """
        dotnet run --project src/FindingRules.Cli -- read rules/msk-ultrasound rules/msk-ultrasound/studies/shoulder.json
        dotnet test FindingRules.sln

        """,
        FencedBlock.All[0].Text);

    [Fact]
    public void The_standing_caution_comes_before_the_commands()
    {
        var text = Repository.ReadText("README.md");

        Assert.InRange(text.IndexOf(Pack.StandingNotice, StringComparison.Ordinal), 1, text.IndexOf("```", StringComparison.Ordinal));
    }

    [Fact]
    public void Links_lead_to_files_that_exist()
    {
        var links = Link().Matches(Repository.ReadText("README.md")).Select(m => m.Groups["target"].Value).ToArray();

        Assert.NotEmpty(links);
        Assert.All(links, l => Assert.True(File.Exists(Repository.PathOf(l)), l));
    }

    [Fact]
    public void The_shown_study_is_the_one_that_the_command_reads() => Assert.True(JsonNode.DeepEquals(
        JsonNode.Parse(Repository.ReadText("rules", "msk-ultrasound", "studies", "shoulder.json")),
        JsonNode.Parse(FencedBlock.The("json study").Text)));

    [Fact]
    public void The_shown_reading_is_what_comes_back_save_where_it_says_that_lines_are_left_out()
    {
        var answer = ReadmePack.Compiled.Read(ReadmePack.Study(FencedBlock.The("json study").Text));
        Assert.NotNull(answer.Reading);
        var written = new StringWriter { NewLine = "\n" };
        ReadingText.Write(written, answer.Reading);

        FencedBlock.The("text reading").MatchInPieces(written.ToString());
    }

    [Fact]
    public void Every_form_of_a_study_is_understood()
    {
        var answer = ReadmePack.Compiled.Read(ReadmePack.Study(FencedBlock.The("json study-forms").Text));

        Assert.True(answer.Reading is not null, ReadmePack.InWords(answer.Messages));
    }

    [Theory]
    [MemberData(nameof(ExampleFiles))]
    public void A_shown_file_takes_its_place_in_the_example_pack(string kind, string text)
    {
        var load = ExamplePack.Plain.With(kind, text).Load();

        Assert.True(load.Pack is not null, ReadmePack.InWords(load.Messages));
    }

    [Fact]
    public void The_shown_part_of_a_vocabulary_is_valid() =>
        Assert.Empty(SchemaFile.Of("vocabulary").Errors(YamlAsJson.Read(FencedBlock.The("yaml part vocabulary").Text)));

    [Fact]
    public void The_shown_message_is_what_the_wrong_file_gives()
    {
        var load = ExamplePack.Plain.With("rules", FencedBlock.The("yaml wrong").Text).Load();

        Assert.Null(load.Pack);
        FencedBlock.The("text message").Match(ReadmePack.InWords(load.Messages));
    }

    [Fact]
    public void The_limits_are_the_ones_in_force()
    {
        var limits = LoadLimits.Default;
        string[] rows =
        [
            $"| a file of a pack | {limits.FileBytes >> 20} MiB |",
            $"| a study | {limits.StudyBytes >> 20} MiB |",
            $"| lists and mappings inside each other | {limits.DocumentDepth} |",
            $"| a rule | {limits.RuleCharacters:N0} characters, {limits.RuleOperators} connecting words and operators, {limits.RuleNesting} brackets inside each other, {Quantified.MostNested} counts in one |",
            "| digits of a number, values of a topic, lesions of a structure, points of an axis "
                + $"| {Rational.MostDigits}, {Topic.MostValues}, {Lesion.Most}, {Axis.MostPoints} |",
        ];

        Assert.All(rows, row => Assert.Contains(row, Repository.ReadText("README.md"), StringComparison.Ordinal));
    }

    [GeneratedRegex(@"\]\((?<target>[^)#:]+)\)")]
    private static partial Regex Link();
}
