using FindingRules.Model.Quantities;
using FindingRules.Model.Readings;
using FindingRules.Model.Text;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Engine.Reporting;

/// <summary>What the text says beside its impressions: exceptions from the calm line, borderline lines, what was recorded.</summary>
public sealed class ReportTextTests
{
    private const string Calm = "No abnormality in the structures that the protocol requires.";

    [Theory]
    [InlineData("thickness above 8 mm → thickened", "7.8 mm",
        "Borderline: state of the tendon of the right supraspinatus tendon could also be thickened (")]
    [InlineData("thickness above 8 mm → ultrasound next", "7.8 mm",
        "Borderline for a next step (thickness 7.8 mm is 0.2 mm from 8 mm): Ultrasound of the region for a body")]
    [InlineData("thickness above 8 mm → ultrasound next", "7.4 mm", null)]
    [InlineData("thickness above 8 mm → refer next", "7.8 mm", null)]
    [InlineData("thickness above 8 mm and contralateral thickness above 8 mm → thickened", "7.8 mm", null)]
    public void What_measuring_alone_could_have_added_is_excepted_from_the_calm_line(string rule, string thickness, string? line)
    {
        var reading = Shoulder(With(rule), $$""" "normal": true, "findings": { "thickness": "{{thickness}}" } """);

        Assert.Equal(line is null ? Calm : $"Apart from what is named below: {Calm}", reading.Calm);
        Assert.Equal(line is not null, reading.ImpressionText.Contains("Borderline", StringComparison.Ordinal));
        if (line is not null) Assert.Contains(line, reading.ImpressionText, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_caution_explains_is_excepted_from_the_calm_line()
    {
        const string heterogeneous = """ "findings": { "fluid": "none", "echo": "heterogeneous" } """;

        var explained = With("echo heterogeneous → position-overestimates").With("cautions", ExamplePack.Plain.TextOf("cautions")
            .Replace("The length", "The {subject} looks so in children. The length", StringComparison.Ordinal));

        Assert.Equal($"Apart from what is named below: {Calm}", Shoulder(explained, heterogeneous).Calm);
        Assert.Null(Shoulder(With("echo heterogeneous → position-overestimates"), heterogeneous).Calm);
        Assert.Null(Shoulder(With("no shadowing → position-overestimates"), heterogeneous).Calm);
    }

    [Fact]
    public void Nearness_to_a_limit_is_not_told_of_an_answer_that_is_withheld()
    {
        var reading = Shoulder(
            With("thickness above 8 mm → thickened", "no shadowing → hold tendon-state"),
            """ "normal": true, "findings": { "thickness": "7.8 mm" } """);

        Assert.DoesNotContain("Borderline", reading.ImpressionText, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_seen_stays_in_the_text_while_its_name_is_withheld()
    {
        var reading = Shoulder(
            With(),
            """ "findings": { "echo": "hypoechoic", "reangled": "resolves", "fluid": "bursal" } """);

        Assert.Equal(
            "Recorded of the right supraspinatus tendon: echo hypoechoic, fluid bursal, reangled resolves; "
            + "not interpreted while an answer is withheld.",
            Assert.Single(reading.Notes));
    }

    [Fact]
    public void Several_subjects_that_are_normal_and_are_not_get_one_line()
    {
        var reading = Shoulder(
            With(), """ "normal": true, "findings": { "echo": "heterogeneous" } """, """ "normal": true, "findings": { "position": "subluxed" } """);

        Assert.Equal(
            "Described as normal and with a finding: right long head of biceps tendon (position), right supraspinatus tendon (echo). "
            + "The rest of each is not taken as normal.",
            reading.Notes[0]);
    }

    [Theory]
    [InlineData("14 mm", "14 mm", "")]
    [InlineData("14 mm", "20 mm", "In the earlier study of the right supraspinatus tendon: tear length 20 mm; compare.")]
    public void An_earlier_change_that_is_another_now_is_noted_beside_what_is_said(string now, string before, string note)
    {
        var pack = ExamplePack.Plain.With("vocabulary", ExamplePack.Plain.TextOf("vocabulary")
            .Replace("tear-length: { measure: mm,", "tear-length: { measure: mm, normal: none,", StringComparison.Ordinal));
        const string torn = """ "fluid": { "from": "bursal", "to": "articular" }, "reangled": "persists" """;
        var answer = pack.Compile().Read(new SourceText("study.json", $$"""
            { "study": "T-1", "subjects": [
                { "structure": "supraspinatus", "side": "right", "findings": { {{torn}}, "tear-length": "{{now}}" } } ],
              "earlier": { "subjects": [
                { "structure": "supraspinatus", "side": "right", "findings": { {{torn}}, "tear-length": "{{before}}" } } ] } }
            """));

        Assert.Equal(note, string.Join(' ', answer.Reading!.Notes));
    }

    [Theory]
    [InlineData("", "about 33.33 %")]
    [InlineData(", shown-to: 1 %", "about 33 %")]
    [InlineData(", shown-to: 0.5 %", "about 33.5 %")]
    public void A_derived_measure_is_shown_as_finely_as_the_pack_says(string shownTo, string shown)
    {
        var text = ExamplePack.Plain.TextOf("measures").Replace(", title:", $"{shownTo}, title:", StringComparison.Ordinal);
        var pack = ExamplePack.Plain.With("measures", text).Compile().Pack;

        Assert.Equal(shown, pack.Symbols.DerivedMeasures["depth-share"].Show(new Rational(1, 3)));
        Assert.Equal("50 %", pack.Symbols.DerivedMeasures["depth-share"].Show(new Rational(1, 2)));
        Assert.Equal(shownTo.Length == 0, pack.MeaningDigest == ExamplePack.Plain.Compile().Pack.MeaningDigest);
    }

    /// <summary>The example without its rules of thickness, and with these.</summary>
    private static ExamplePack With(params string[] rules)
    {
        var text = ExamplePack.Plain.TextOf("rules");
        var start = text.IndexOf("  - id: TEN-010", StringComparison.Ordinal);
        var end = text.IndexOf("  - id: BIC-004", StringComparison.Ordinal);
        var added = string.Concat(rules.Select((rule, i) =>
            $"  - {{ id: NEAR-00{i}, for: each cuff-tendon, rule: \"{rule}\", because: A rule of this test., source: [trade] }}\n"));
        return ExamplePack.Plain.With("rules", text[..start] + added + text[end..]);
    }

    private static Reading Shoulder(ExamplePack pack, string supraspinatus, string biceps = "\"normal\": true")
    {
        var answer = pack.Compile().Read(new SourceText("study.json", $$"""
            { "study": "T-1", "protocols": [{ "protocol": "shoulder", "side": "right" }], "subjects": [
                { "structure": "biceps", "side": "right", {{biceps}} }, { "structure": "subscapularis", "side": "right", "normal": true },
                { "structure": "supraspinatus", "side": "right", {{supraspinatus}} } ] }
            """));
        Assert.True(answer.Reading is not null, string.Join('\n', answer.Messages.Select(m => $"{m.Code} {m.Text}")));
        return answer.Reading;
    }
}
