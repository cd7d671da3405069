using FindingRules.Model.Readings;
using FindingRules.Model.Text;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Engine.Reporting;

/// <summary>That what a reading says of a decision is true of it: what it rests on, whose it is, how near, and why there is nothing.</summary>
public sealed class SaidOfDecisionsTests
{
    private const string Calm = "No abnormality in the structures that the protocol requires.";

    [Theory]
    [InlineData("The length can be too long.", false)]
    [InlineData("The length of the {subject} can be too long.", true)]
    [InlineData("The length can be too long{: shadowing}.", true)]
    [InlineData("The length can be too long{: arm-position}.", false)]
    [InlineData("The length can be too long{: echo}.", false)]
    public void A_caution_answers_a_departing_finding_only_where_it_names_it(string says, bool isNamed)
    {
        var pack = With(["no contralateral shadowing or shadowing → position-overestimates"])
            .With("cautions", $"cautions:\n  position-overestimates:\n    says: \"{says}\"\n    source: [trade]\n...\n");

        var reading = Shoulder(pack, """ "findings": { "fluid": "none", "echo": "fibrillar", "shadowing": "present" } """);

        Assert.Single(reading.Cautions);
        Assert.Equal(isNamed ? $"Apart from what is named below: {Calm}" : null, reading.Calm);
        Assert.Equal(!isNamed, reading.ImpressionText.Contains(
            "Also recorded of the right supraspinatus tendon: shadowing present; not interpreted.", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("any cuff-tendon where (echo anechoic)", "left supraspinatus")]
    [InlineData("at least 1 cuff-tendon where (echo anechoic)", "left supraspinatus")]
    [InlineData("not (every cuff-tendon where (echo fibrillar))", "left supraspinatus, left infraspinatus")]
    [InlineData("not (no cuff-tendon where (echo anechoic))", "left supraspinatus")]
    public void A_count_rests_on_the_structures_that_carry_it(string condition, string subjects)
    {
        var reading = Read(With([(condition + " → several-torn", "study")]), """
            { "structure": "supraspinatus", "side": "left", "findings": { "echo": "anechoic" } },
            { "structure": "infraspinatus", "side": "left", "findings": { "echo": "heterogeneous" } },
            { "structure": "subscapularis", "side": "left", "findings": { "echo": "fibrillar" } }
            """);

        var said = Assert.Single(reading.Suggestions);
        Assert.Equal(subjects.Split(", ").Order(), said.RestsOn.Select(e => e.Subject).Order());
        Assert.Equal(!subjects.Contains("infra", StringComparison.Ordinal), reading.ImpressionText.Contains(
            "Also recorded of the left infraspinatus tendon: echo heterogeneous; not interpreted.", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("thickness above ipsilateral infraspinatus thickness + 5 mm", "supraspinatus",
        "(Borderline: thickness 15.2 mm, thickness of the left infraspinatus tendon 10 mm: 0.2 mm from the limit of 15 mm.)")]
    [InlineData("thickness above contralateral thickness + 2 mm", "supraspinatus",
        "(Borderline: thickness 15.2 mm, other side 13 mm: 0.2 mm from the limit of 15 mm.)")]
    [InlineData("contralateral thickness - thickness below -2 mm", "supraspinatus",
        "(Borderline: thickness 15.2 mm, other side 13 mm: 0.2 mm from the limit of -2 mm.)")]
    [InlineData("contralateral thickness below 13.2 mm", "supraspinatus",
        "(Borderline: thickness of the other side 13 mm is 0.2 mm from 13.2 mm.)")]
    public void Only_the_other_side_of_the_same_structure_is_called_so(string condition, string structure, string mark)
    {
        var reading = Read(With([(condition + " → thickened", $"each {structure}")]), """
            { "structure": "supraspinatus", "side": "left", "findings": { "thickness": "15.2 mm" } },
            { "structure": "infraspinatus", "side": "left", "findings": { "thickness": "10 mm" } },
            { "structure": "supraspinatus", "side": "right", "findings": { "thickness": "13 mm" } }
            """);

        Assert.Contains(mark, OneLine(reading), StringComparison.Ordinal);
    }

    [Fact]
    public void Lesions_of_one_side_are_each_named()
    {
        var reading = Read(With([("ipsilateral infraspinatus tear-length above 3 cm → thickened", "each supraspinatus")]), """
            { "structure": "supraspinatus", "side": "left" },
            { "structure": "infraspinatus", "side": "left", "lesions": [
                { "id": "L1", "findings": { "tear-length": "29.5 mm" } }, { "id": "L2", "findings": { "tear-length": "29.8 mm" } }] }
            """);

        Assert.Contains(
            "could also be thickened (tear length of the left infraspinatus tendon (lesion L1) 29.5 mm is 0.5 mm from 3 cm; "
            + "tear length of the left infraspinatus tendon (lesion L2) 29.8 mm is 0.2 mm from 3 cm).",
            OneLine(reading), StringComparison.Ordinal);
    }

    [Fact]
    public void A_second_line_by_the_same_distance_keeps_its_mark()
    {
        var reading = Shoulder(
            With(["thickness above 8 mm → thickened", "thickness above 8 mm → bursal-sided"]),
            """ "findings": { "thickness": "8.2 mm" } """);

        Assert.Equal(2, reading.ImpressionText.Split('\n').Count(l => l.Contains("(Borderline", StringComparison.Ordinal)));
        Assert.Single(reading.ImpressionText.Split('\n'), l => l.EndsWith(" (Borderline.)", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("thickness above 8 mm → hold tear-depth", "", "(Borderline, could be withheld: thickness 7.9 mm is 0.1 mm from 8 mm.)")]
    [InlineData("thickness above 8 mm → position-overestimates", "over: [NEAR-001]",
        "(Borderline, could be left out: thickness 7.9 mm is 0.1 mm from 8 mm.)")]
    [InlineData("thickness above 9 mm → hold tear-depth", "", null)]
    public void What_a_near_rule_would_have_taken_back_is_borderline(string near, string over, string? mark)
    {
        var pack = With([(near, "each cuff-tendon", over), ("fluid reaches bursal → bursal-sided", "each cuff-tendon", "")]);

        var reading = Shoulder(pack, """ "findings": { "thickness": "7.9 mm", "fluid": "bursal" } """);

        Assert.Contains(
            $"bursal surface.{(mark is null ? "" : $" {mark}")}\n", reading.ImpressionText, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("8.2 mm", true)]
    [InlineData("9 mm", false)]
    public void What_rests_on_a_borderline_answer_is_marked(string thickness, bool isMarked)
    {
        var reading = Shoulder(
            With(["thickness above 8 mm → thickened", "supraspinatus tendon-state thickened → bursal-sided"], "each supraspinatus"),
            $$""" "findings": { "thickness": "{{thickness}}" } """);

        Assert.Equal(isMarked, reading.ImpressionText.Contains(
            "bursal surface. (Borderline: rests on state of the tendon, which is borderline.)\n", StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_said_already_is_no_other_answer()
    {
        var reading = Shoulder(
            With(["thickness above 8 mm → thickened", "thickness above 10 mm → thickened"]), """ "findings": { "thickness": "9.8 mm" } """);

        Assert.Equal("thickened", Assert.Single(reading.Suggestions).Value);
        Assert.NotEmpty(reading.Borderline);
        Assert.DoesNotContain("could also be", reading.ImpressionText, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0.5 mm", false)]
    [InlineData("20 mm", true)]
    public void A_divisor_that_the_precision_takes_to_zero_is_near_no_limit(string divisor, bool isNear)
    {
        var reading = Shoulder(With(["defect-depth / thickness below 50 % → thickened"]),
            $$""" "findings": { "defect-depth": "10.2 mm", "thickness": "{{divisor}}" } """);

        Assert.Equal(isNear, reading.ImpressionText.Contains("could also be thickened", StringComparison.Ordinal));
        Assert.NotEmpty(reading.Borderline);
    }

    private static ExamplePack With(string[] rules, string scope = "each cuff-tendon") => With([.. rules.Select(r => (r, scope, ""))]);

    private static ExamplePack With((string Rule, string Scope)[] rules) => With([.. rules.Select(r => (r.Rule, r.Scope, ""))]);

    /// <summary>The example with these rules only.</summary>
    private static ExamplePack With((string Rule, string Scope, string More)[] rules) =>
        ExamplePack.Plain.With("rules", "rules:\n" + string.Concat(rules.Select((r, i) =>
            $"  - id: NEAR-00{i}\n    for: {r.Scope}\n    rule: {r.Rule}\n    because: A rule of this test.\n    source: [trade]\n"
            + (r.More.Length == 0 ? "" : $"    {r.More}\n"))) + "...\n");

    private static string OneLine(Reading reading) => reading.ImpressionText.Replace('\n', ' ');

    private static Reading Shoulder(ExamplePack pack, string supraspinatus) => Read(
        pack,
        $$"""
        { "structure": "biceps", "side": "right", "normal": true }, { "structure": "subscapularis", "side": "right", "normal": true },
        { "structure": "supraspinatus", "side": "right", {{supraspinatus}} }
        """,
        """ "protocols": [{ "protocol": "shoulder", "side": "right" }],""");

    private static Reading Read(ExamplePack pack, string subjects, string protocols = "")
    {
        var answer = pack.Compile().Read(new SourceText("study.json", $$"""
            { "study": "T-1", {{protocols}} "subjects": [{{subjects}}] }
            """));
        Assert.True(answer.Reading is not null, string.Join('\n', answer.Messages.Select(m => $"{m.Code} {m.Text}")));
        return answer.Reading;
    }
}
