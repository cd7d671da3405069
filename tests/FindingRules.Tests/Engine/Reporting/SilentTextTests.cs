using FindingRules.Model.Readings;
using FindingRules.Model.Text;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Engine.Reporting;

/// <summary>What is said where no line is: that no rule applies is said only where it is so.</summary>
public sealed class SilentTextTests
{
    private const string NoRule = "No rule of this pack applies to what was sent.";
    private const string NoProtocol = "No protocol was named, so completeness was not checked.";

    [Theory]
    [InlineData("echo anechoic → thickened", """ "echo": "fibrillar" """, $"{NoRule} {NoProtocol}")]
    [InlineData("echo fibrillar → tendon-state regular", """ "echo": "fibrillar" """,
        $"Nothing to report: what applies (SAY-000) has no words of its own. {NoProtocol}")]
    [InlineData("echo anechoic → thickened", """ "echo": "not-assessable" """,
        "Undecided: what was found settles nothing yet. Not assessable: right supraspinatus tendon (echo).")]
    [InlineData("echo fibrillar and contralateral echo anechoic → thickened", """ "echo": "fibrillar" """,
        "Undecided: what was found settles nothing yet. Needed: left supraspinatus tendon: echo.")]
    [InlineData("tear-length / defect-depth above 1 → thickened", """ "tear-length": "5 mm", "defect-depth": "0 mm" """,
        "Undecided: what was found settles nothing yet. With everything measured this stays undecided: SAY-000.")]
    [InlineData("echo fibrillar and thickness above 8 mm → thickened", """ "echo": "fibrillar" """,
        "Undecided: what was found settles nothing yet. Needed: right supraspinatus tendon: thickness.")]
    public void Why_there_is_nothing_to_say(string rule, string findings, string line)
    {
        var pack = With(rule);
        pack = pack.With("vocabulary", pack.TextOf("vocabulary").Replace(
            "defect-depth: { measure: mm, plausible: 0.5 mm", "defect-depth: { measure: mm, plausible: 0 mm", StringComparison.Ordinal));

        Assert.Equal(line, FirstLine(Read(pack, Supraspinatus(findings))));
    }

    [Fact]
    public void A_divisor_that_may_be_zero_leaves_the_rule_among_the_undecided()
    {
        var pack = With("tear-length / defect-depth above 1 → thickened");
        pack = pack.With("vocabulary", pack.TextOf("vocabulary").Replace(
            "defect-depth: { measure: mm, plausible: 0.5 mm", "defect-depth: { measure: mm, plausible: 0 mm", StringComparison.Ordinal));

        var left = Assert.Single(Read(pack, Supraspinatus(""" "tear-length": "5 mm", "defect-depth": "0 mm" """)).Unknown);

        Assert.Equal(("SAY-000", 0), (left.Rule.Id, left.Missing.Length));
        Assert.Empty(Read(pack, Supraspinatus(""" "echo": "fibrillar" """)).Unknown);
    }

    [Theory]
    [InlineData(""" "findings": { "fluid": "none", "echo": "fibrillar" } """,
        $"Done already: Look again at the right subscapularis tendon. Found: fluid: none; echo: fibrillar. {NoProtocol}")]
    [InlineData(""" "notAssessable": true """, "Not assessable: right subscapularis tendon (fluid, echo).")]
    [InlineData(""" "findings": { "fluid": "none", "echo": "not-assessable" } """, "Not assessable: right subscapularis tendon (echo).")]
    public void A_look_that_was_tried_is_told_of_with_what_it_told(string subscapularis, string line)
    {
        var reading = Read(With("echo anechoic → thickened", "position subluxed → evaluate subscapularis"), $$"""
            { "structure": "biceps", "side": "right", "findings": { "position": "subluxed" } },
            { "structure": "subscapularis", "side": "right", {{subscapularis}} }
            """);

        Assert.True(Assert.Single(reading.NextSteps).IsDone);
        Assert.Equal(line, FirstLine(reading));
    }

    [Fact]
    public void What_the_protocol_misses_there_is_not_told_twice()
    {
        var reading = Read(
            With("echo anechoic → thickened", "position subluxed → evaluate subscapularis"),
            """
            { "structure": "biceps", "side": "right", "findings": { "position": "subluxed" } },
            { "structure": "subscapularis", "side": "right", "notAssessable": true }
            """,
            """ "protocols": [{ "protocol": "shoulder", "side": "right" }], """);

        Assert.Single(reading.ImpressionText.Split('\n'), l => l.StartsWith("Not assessable: right subscapularis", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("99.99 %", "negative", "above 99.9 %", "99.99 %")]
    [InlineData("0.1 %", "negative", "below 0.1 %", "0.1 %")]
    [InlineData("50 %", "negative", "23.3 %", "50 %")]
    [InlineData("0 %", "negative", "0 %", "0 %")]
    [InlineData("100 %", "positive", "100 %", "100 %")]
    public void A_probability_is_rounded_neither_to_none_nor_to_certainty(string before, string finding, string after, string said)
    {
        var rule = $"suspected wood → probability from {before} after {finding} foreign-body-accuracy";
        var pack = ExamplePack.Plain.With("rules", Rules("study", rule));

        var note = Assert.Single(Read(pack, "", """ "facts": { "suspected": "wood" }, """).Probabilities);

        Assert.Equal((after, said), (note.After, note.Before));
        Assert.Contains($": {after}", note.Text, StringComparison.Ordinal);
        Assert.Contains($", from {said} before;", note.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_derived_measure_keeps_its_open_end()
    {
        var pack = With("echo fibrillar → thickened");
        pack = pack.With("topics", pack.TextOf("topics").Replace("({thickness})", "({depth-share})", StringComparison.Ordinal)
            .Replace("  tendon-state:\n    for: each tendon\n    per: structure", "  tendon-state:\n    for: each cuff-tendon", StringComparison.Ordinal));

        string Said(string depth) => Read(pack, Supraspinatus($$""" "echo": "fibrillar", "thickness": "10 mm", "defect-depth": "{{depth}}" """))
            .ImpressionText.Split('\n')[0];

        Assert.Equal("The right supraspinatus tendon is thickened (5 % to below 50 %).", Said("<5 mm"));
        Assert.Equal("The right supraspinatus tendon is thickened (5 % to 50 %).", Said("<=5 mm"));
        Assert.Equal("The right supraspinatus tendon is thickened (50 %).", Said("5 mm"));
    }

    [Theory]
    [InlineData(""" "suspected": "wood" """, true)]
    [InlineData(""" "trauma": "present" """, true)]
    [InlineData(""" "trauma": "absent" """, false)]
    public void The_calm_line_excepts_what_is_said_of_no_structure(string facts, bool isExcepted)
    {
        var pack = ExamplePack.Plain.With("rules", Rules("study", "suspected wood → probability from 50 % after negative foreign-body-accuracy"));
        pack = pack.With("vocabulary", pack.TextOf("vocabulary").Replace(
            "trauma: { sign: true }", "trauma: { sign: true, normal: absent }", StringComparison.Ordinal));

        var reading = Read(
            pack,
            """
            { "structure": "biceps", "side": "right", "normal": true }, { "structure": "subscapularis", "side": "right", "normal": true },
            { "structure": "supraspinatus", "side": "right", "normal": true }
            """,
            $$""" "facts": { {{facts}} }, "protocols": [{ "protocol": "shoulder", "side": "right" }], """);

        Assert.Equal(isExcepted, reading.Calm?.StartsWith("Apart from what is named below: ", StringComparison.Ordinal));
        Assert.Equal(
            facts.Contains("trauma\": \"present", StringComparison.Ordinal),
            reading.ImpressionText.Contains("Also recorded of the study: trauma present; not interpreted.", StringComparison.Ordinal));
    }

    private static string FirstLine(Reading reading) => reading.ImpressionText.Split('\n')[0];

    private static string Supraspinatus(string findings) =>
        $$"""{ "structure": "supraspinatus", "side": "right", "findings": { {{findings}} } }""";

    /// <summary>The example with these rules only: the first of cuff tendons, the others of the biceps.</summary>
    private static ExamplePack With(string rule, params string[] ofBiceps) => ExamplePack.Plain.With(
        "rules", Rules("each cuff-tendon", rule).Replace("...\n", "", StringComparison.Ordinal)
            + Rules("each biceps-tendon", ofBiceps).Replace("rules:\n", "", StringComparison.Ordinal).Replace("SAY-00", "BI-00", StringComparison.Ordinal));

    private static string Rules(string scope, params string[] rules) => "rules:\n" + string.Concat(rules.Select((rule, i) =>
        $"  - id: SAY-00{i}\n    for: {scope}\n    rule: {rule}\n    because: A rule of this test.\n    source: [trade]\n")) + "...\n";

    private static Reading Read(ExamplePack pack, string subjects, string more = "")
    {
        var answer = pack.Compile().Read(new SourceText("study.json", $$"""
            { "study": "T-1", {{more}} "subjects": [{{subjects}}] }
            """));
        Assert.True(answer.Reading is not null, string.Join('\n', answer.Messages.Select(m => $"{m.Code} {m.Text}")));
        return answer.Reading;
    }
}
