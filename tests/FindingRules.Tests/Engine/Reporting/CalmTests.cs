using System.Text.RegularExpressions;
using FindingRules.Model.Readings;
using FindingRules.Model.Text;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Engine.Reporting;

/// <summary>When a study is called normal, and what is said of findings that no rule answers.</summary>
public sealed partial class CalmTests
{
    private const string Calm = "No abnormality in the structures that the protocol requires.";

    // Without the rules that compare with the other side: nothing of it is sent here.
    private static readonly ExamplePack Plain = ExamplePack.Plain.With("rules", OneSided().Replace(ExamplePack.Plain.TextOf("rules"), ""));

    private static readonly ExamplePack WithFacts = Plain.With("protocols", ExamplePack.Plain.TextOf("protocols")
        .Replace("    calm:", "    facts: [arm-position]\n    calm:", StringComparison.Ordinal));

    [Fact]
    public void A_normal_study_gets_its_line_and_nothing_else()
    {
        var reading = Shoulder(Plain, """ "normal": true """);

        Assert.Equal(Calm, reading.Calm);
        Assert.Empty(reading.Notes);
        Assert.DoesNotContain(reading.Unknown, u => u.Subject == "right supraspinatus");
    }

    [Theory]
    [InlineData(""" "normal": true, "findings": { "shadowing": "present" } """, "shadowing present")]
    [InlineData(""" "findings": { "fluid": "none", "echo": "heterogeneous" } """, "echo heterogeneous")]
    [InlineData(""" "findings": { "fluid": "none", "echo": "heterogeneous", "shadowing": true } """, "echo heterogeneous, shadowing present")]
    [InlineData(
        """ "findings": { "fluid": "none", "echo": "fibrillar" }, "lesions": [{ "id": "L1", "findings": { "shadowing": true } }] """,
        "shadowing present")]
    public void A_study_is_not_called_normal_beside_a_finding_that_departs_from_normal(string supraspinatus, string recorded)
    {
        var reading = Shoulder(Plain, supraspinatus);

        Assert.Null(reading.Calm);
        Assert.Contains(reading.Notes, n => n.EndsWith($": {recorded}; not interpreted.", StringComparison.Ordinal));
        Assert.Contains(recorded, reading.ImpressionText.Replace('\n', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_described_is_not_noted_again_and_a_sign_beside_it_is()
    {
        const string torn = """ "fluid": { "from": "bursal", "to": "articular" }, "reangled": "persists", "echo": "anechoic" """;

        Assert.Empty(Shoulder(Plain, $$""" "findings": { {{torn}} } """).Notes);
        Assert.Equal(
            "Also recorded of the right supraspinatus tendon: shadowing present; not interpreted.",
            Assert.Single(Shoulder(Plain, $$""" "findings": { {{torn}}, "shadowing": "present" } """).Notes));
    }

    [Theory]
    [InlineData("", "Not stated: arm position.")]
    [InlineData(""" "arm-position": "not-assessable" """, "Could not be told: arm position.")]
    [InlineData(""" "arm-position": "crass" """, null)]
    public void A_protocol_may_require_facts_of_the_study(string facts, string? line)
    {
        var reading = Shoulder(WithFacts, """ "normal": true """, facts);

        Assert.Equal(line is null, reading.Calm is not null);
        Assert.Equal(line is null, reading.NotAssessed.IsEmpty);
        if (line is not null) Assert.Contains(line, reading.ImpressionText, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fact_that_a_protocol_requires_is_one_of_the_vocabulary_and_changes_what_the_pack_means()
    {
        var misspelt = Plain.With(
            "protocols", WithFacts.TextOf("protocols").Replace("arm-position", "arm-positio", StringComparison.Ordinal));

        var message = Assert.Single(misspelt.Load().Messages);
        Assert.Equal(("FR3507", "arm-position"), (message.Code, message.Fix?.Replacement));
        Assert.NotEqual(Plain.Compile().Pack.MeaningDigest, WithFacts.Compile().Pack.MeaningDigest);
    }

    [Fact]
    public void Borderline_is_said_once_with_the_other_answer()
    {
        var reading = Shoulder(Plain, """
            "findings": { "fluid": { "from": "bursal", "to": "articular" }, "reangled": "persists", "echo": "anechoic", "tear-length": "29.5 mm" }
            """);

        Assert.Contains(
            "(Borderline, could also be large: tear length 29.5 mm is 0.5 mm from 3 cm.)", reading.ImpressionText, StringComparison.Ordinal);
        Assert.Single(reading.ImpressionText.Split("Borderline"), part => part.Contains("29.5 mm is", StringComparison.Ordinal));
    }

    [Fact]
    public void Each_side_is_called_normal_for_itself()
    {
        var answer = Plain.Compile().Read(new SourceText("study.json", $$"""
            { "study": "T-1", "protocols": [{ "protocol": "shoulder", "side": "right" }, { "protocol": "shoulder", "side": "left" }], "subjects": [
                {{Side("right", "\"normal\": true")}}, {{Side("left", "\"findings\": { \"fluid\": \"none\", \"echo\": \"heterogeneous\" }")}}] }
            """));

        Assert.Equal($"Right side, complete shoulder: {Calm}", answer.Reading?.Calm);
    }

    [Theory]
    [InlineData("8.5 mm", true)]
    [InlineData("8.6 mm", false)]
    [InlineData("1.5 mm", true)]
    public void A_measurement_that_its_error_may_have_carried_out_of_the_normal_range_is_no_departure(string thickness, bool isCalm)
    {
        var reading = Shoulder(Plain, $$""" "normal": true, "findings": { "thickness": "{{thickness}}" } """);

        Assert.Equal(isCalm, reading.Calm is not null);
        Assert.Equal(isCalm, reading.Notes.IsEmpty);
    }

    [Theory]
    [InlineData("\"tear-length\": \"9 mm\"", false)]
    [InlineData("\"tear-length\": \"not-assessable\"", true)]
    [InlineData("\"thickness\": \"5 mm\"", true)]
    public void What_only_a_change_has_stops_the_line_and_not_the_filling_in(string finding, bool isCalm)
    {
        var pack = Plain.With("vocabulary", Plain.TextOf("vocabulary")
            .Replace("tear-length: { measure: mm,", "tear-length: { measure: mm, normal: none,", StringComparison.Ordinal));

        var reading = Shoulder(pack, $$""" "normal": true, "findings": { {{finding}} } """);

        Assert.Equal(isCalm, reading.Calm is not null);
        Assert.Empty(reading.NotAssessed);
        Assert.Equal(
            isCalm ? "" : "Also recorded of the right supraspinatus tendon: tear length 9 mm; not interpreted.", string.Join(' ', reading.Notes));
        Assert.NotEqual(Plain.Compile().Pack.MeaningDigest, pack.Compile().Pack.MeaningDigest);
    }

    [Theory]
    [InlineData("\"echo\": \"heterogeneous\"", "In the earlier study of the right supraspinatus tendon: echo heterogeneous; compare.")]
    [InlineData("\"echo\": \"fibrillar\"", null)]
    public void A_study_is_not_called_normal_over_an_earlier_change_that_nothing_answers(string earlier, string? note)
    {
        var answer = Plain.Compile().Read(new SourceText("study.json", $$"""
            { "study": "T-1", "protocols": [{ "protocol": "shoulder", "side": "right" }], "subjects": [{{Side("right", "\"normal\": true")}}],
              "earlier": { "subjects": [{ "structure": "supraspinatus", "side": "right", "findings": { {{earlier}} } }] } }
            """));

        Assert.Equal(note is null, answer.Reading!.Calm is not null);
        Assert.Equal(note ?? "", string.Join(' ', answer.Reading.Notes));
    }

    [Fact]
    public void A_lesion_that_contradicts_its_structure_is_said()
    {
        var reading = Shoulder(Plain, """
            "findings": { "fluid": "none", "echo": "fibrillar" }, "lesions": [{ "id": "L1", "findings": { "fluid": "bursal" } }]
            """);

        Assert.Contains(
            "The right supraspinatus tendon was sent with fluid none, which its lesion L1 contradicts: check which holds.", reading.Notes);
    }

    private static string Side(string side, string supraspinatus) => $$"""
        { "structure": "biceps", "side": "{{side}}", "normal": true }, { "structure": "subscapularis", "side": "{{side}}", "normal": true },
        { "structure": "supraspinatus", "side": "{{side}}", {{supraspinatus}} }
        """;

    private static Reading Shoulder(ExamplePack pack, string supraspinatus, string facts = "")
    {
        var answer = pack.Compile().Read(new SourceText("study.json", $$"""
            { "study": "T-1", "protocols": [{ "protocol": "shoulder", "side": "right" }], "facts": { {{facts}} }, "subjects": [
                {{Side("right", supraspinatus)}}] }
            """));
        Assert.True(answer.Reading is not null, string.Join('\n', answer.Messages.Select(m => $"{m.Code} {m.Text}")));
        return answer.Reading;
    }

    [GeneratedRegex("  - id: TEN-01.*?(?=  - id)", RegexOptions.Singleline)]
    private static partial Regex OneSided();
}
