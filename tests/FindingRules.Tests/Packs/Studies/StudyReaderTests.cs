using System.Diagnostics;
using CsCheck;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Packs.Studies;

public class StudyReaderTests
{
    private const string Whole = """
        { "study": "S-7F3K", "pack": "example", "supersedes": "S-7F3J",
          "protocols": [ { "protocol": "shoulder", "side": "right" } ],
          "facts": { "modality": "ultrasound", "trauma": false, "age": "47 years" },
          "subjects": [
            { "structure": "supraspinatus", "side": "right",
              "findings": { "fluid": { "from": "bursal", "to": "articular" }, "thickness": { "value": 6.1, "unit": "mm" } },
              "lesions": [ { "id": "L1", "findings": { "tear-length": "4 mm" } }, { "id": "L2", "findings": { "tear-length": "<9 mm" } } ] },
            { "structure": "infraspinatus", "side": "right", "normal": true },
            { "structure": "biceps", "notAssessable": true } ],
          "earlier": { "facts": { "modality": "mri" }, "subjects": [ { "structure": "supraspinatus", "side": "right", "findings": { "tear-length": "3 mm" } } ] } }
        """;

    [Fact]
    public void A_whole_study_is_read()
    {
        var (study, messages) = Reads.Study(Whole);
        Assert.Equal("", Reads.Show(messages));
        Assert.Equal(("S-7F3K", "example", "S-7F3J"), (study!.Key, study.PackName, study.Supersedes));
        Assert.Equal(("shoulder", Side.Right), (study.Protocols[0].Protocol.Name, study.Protocols[0].Side));
        Assert.Equal(new SignValue(false), study.Facts.Find("trauma")!.Value);
        Assert.Equal(["biceps", "infraspinatus", "supraspinatus"], study.Subjects.Select(s => s.Structure.Name));
        Assert.Equal([Side.Unknown, Side.Right, Side.Right], study.Subjects.Select(s => s.Side));
        Assert.Equal(["L1", "L2"], study.Subjects[2].Lesions.Select(l => l.Id));
        Assert.True(study.Subjects[1].IsNormal);
        Assert.True(study.Subjects[0].IsNotAssessable);
        Assert.Equal("mri", study.EarlierFacts.Find("modality")!.Value.ToString());
        Assert.Equal("3 mm", study.Earlier!.Value[0].Findings.Find("tear-length")!.Value.ToString());
    }

    [Fact]
    public void Every_finding_has_line_column_and_pointer()
    {
        var study = Reads.Study(Whole).Study!;
        var location = study.Subjects[2].Lesions[1].Findings.Find("tear-length")!.Location;
        Assert.Equal(("/subjects/0/lesions/1/findings/tear-length", "\"<9 mm\"", 7), (location.Pointer, location.Words, location.Start.Line));
        Assert.Equal("/subjects/0/findings/thickness", study.Subjects[2].Findings.Find("thickness")!.Location.Pointer);
    }

    [Fact]
    public void A_study_of_a_key_alone_is_a_study()
    {
        var study = Reads.Study("""{ "study": "S" }""").Study!;
        Assert.Empty(study.Subjects);
        Assert.Null(study.Earlier);
    }

    [Fact]
    public void An_empty_earlier_study_is_not_the_same_as_none() =>
        Assert.Empty(Reads.Study("""{ "study": "S", "earlier": {} }""").Study!.Earlier!.Value);

    [Theory]
    [InlineData("{ \"study\": \"S\", ⟦\"patientName\"⟧: \"X\" }", "FR5005", "/patientName")]
    [InlineData("{ \"study\": \"S\", \"facts\": { ⟦\"dateOfBirth\"⟧: \"1970-01-01\" } }", "FR5005", "/facts/dateOfBirth")]
    [InlineData("{ \"study\": \"S\", \"subjects\": [ { \"structure\": \"biceps\", ⟦\"MRN\"⟧: 5 } ] }", "FR5005", "/subjects/0/MRN")]
    [InlineData("{ \"study\": ⟦\"Smith, J\"⟧ }", "FR5008", "/study")]
    [InlineData("⟦{⟧ \"subjects\": [] }", "FR5007", "")]
    [InlineData("{ \"study\": \"S\", \"pack\": ⟦\"other\"⟧ }", "FR5009", "/pack")]
    [InlineData("{ \"study\": \"S\", \"subjects\": [ { \"structure\": \"⟦tendon⟧\" } ] }", "FR5010", "/subjects/0/structure")]
    [InlineData("{ \"study\": \"S\", \"subjects\": [ { \"structure\": \"biceps\", \"side\": ⟦\"l\"⟧ } ] }", "FR5024", "/subjects/0/side")]
    [InlineData("{ \"study\": \"S\", \"subjects\": [ { \"structure\": \"biceps\", \"side\": \"left\", \"findings\": { ⟦\"fluid\"⟧: \"none\" } } ] }", "FR5011", "/subjects/0/findings/fluid")]
    [InlineData("{ \"study\": \"S\", \"facts\": ⟦[⟧] }", "FR5006", "/facts")]
    [InlineData("{ \"study\": \"S\", \"earlier\": { ⟦\"earlier\"⟧: {} } }", "FR5004", "/earlier/earlier")]
    public void A_mistake_is_underlined_and_has_its_pointer(string marked, string code, string pointer)
    {
        var source = MarkedSource.Parse(marked.Replace("⟦tendon⟧", "tendon", StringComparison.Ordinal).Replace("\"tendon\"", "⟦\"tendon\"⟧", StringComparison.Ordinal));
        var message = Assert.Single(Reads.Study(source.Text).Messages);
        Assert.Equal((code, pointer), (message.Code, message.Location.Pointer));
        Assert.Equal(MarkedSource.Show(source.Text, source.Spans), MarkedSource.Show(source.Text, [message.Location.Span]));
    }

    [Theory]
    [InlineData("echo", "\"In Groove\"", "FR5031")]
    [InlineData("echo", "\"Hypoechoic\"", "FR5013")]
    [InlineData("echo", "7", "FR5006")]
    [InlineData("echo", "{}", "FR5006")]
    [InlineData("fluid", "\"up to the bursa\"", "FR5031")]
    [InlineData("fluid", "[]", "FR5006")]
    [InlineData("fluid", "[\"none\"]", "FR5015")]
    [InlineData("fluid", "{ \"from\": \"bursal\" }", "FR5007")]
    [InlineData("fluid", "true", "FR5006")]
    [InlineData("shadowing", "\"yes\"", "FR5014")]
    [InlineData("shadowing", "1", "FR5014")]
    [InlineData("shadowing", "\"a bit of it\"", "FR5031")]
    public void A_value_of_the_wrong_sort_is_told(string finding, string json, string code) =>
        Assert.Equal([code], Reads.Codes(Reads.Study(Subject(finding, json)).Messages));

    [Fact]
    public void Free_text_is_not_repeated_in_the_message()
    {
        var message = Assert.Single(Reads.Study(Subject("echo", "\"dark, says Miss Somebody\"")).Messages);
        Assert.DoesNotContain("Somebody", message.Text + message.Label);
    }

    [Fact]
    public void All_mistakes_of_a_study_are_told_at_once()
    {
        const string study = """
            { "study": "not a key", "pack": "other", "facts": { "age": "47.5 years", "colour": "red" },
              "subjects": [ { "structure": "biceps", "side": "right", "findings": { "echo": "grey", "thickness": 3 } }, { "structure": "bicep" } ] }
            """;
        Assert.Equal(
            ["FR5008", "FR5009", "FR5032", "FR5012", "FR5013", "FR5019", "FR5010"], Reads.Codes(Reads.Study(study).Messages));
    }

    [Fact]
    public void A_finding_that_another_kind_has_is_explained() =>
        Assert.Equal(
            "each cuff-tendon has it; `biceps` is a biceps-tendon",
            Assert.Single(Reads.Study("""{ "study": "S", "subjects": [ { "structure": "biceps", "side": "left", "findings": { "fluid": "none" } } ] }""").Messages).Label);

    [Fact]
    public void Any_piece_of_a_study_is_told_and_never_throws()
    {
        for (var length = 0; length < Whole.Length; length++)
        {
            var (study, messages) = Reads.Study(Whole[..length]);
            Assert.Null(study);
            Assert.Contains(messages, m => m.Severity == Severity.Error);
        }
    }

    [Fact]
    public void Any_change_of_a_character_is_read_or_told_and_never_throws() =>
        Gen.Select(Gen.Int[0, Whole.Length - 1], Gen.Char).Sample((at, with) =>
        {
            var (study, messages) = Reads.Study($"{Whole[..at]}{with}{Whole[(at + 1)..]}");
            Assert.True(study is not null ^ messages.Length > 0);
            Assert.All(messages, m => Assert.NotNull(m.Location.Pointer));
        }, iter: 2_000);

    [Fact]
    public void Reading_a_study_takes_well_under_a_tenth_of_a_millisecond()
    {
        var source = new SourceText("study.json", Whole);
        var best = double.MaxValue;
        for (var attempt = 0; attempt < 4_000 && (attempt < 500 || best > 100); attempt++)
        {
            var start = Stopwatch.GetTimestamp();
            StudyReader.Read(source, Reads.Example, LoadLimits.Default, new MessageBag());
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMicroseconds);
        }
        Assert.InRange(best, 0, 100);
    }

    private static string Subject(string finding, string json) => $$"""
        { "study": "S", "subjects": [ { "structure": "supraspinatus", "side": "right", "findings": { "{{finding}}": {{json}} } } ] }
        """;
}
