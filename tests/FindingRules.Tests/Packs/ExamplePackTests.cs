using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Packs;

public class ExamplePackTests
{
    [Fact]
    public void The_example_pack_is_read_without_a_message()
    {
        var (pack, messages) = Reads.Pack(ExamplePack.Plain);
        Assert.Equal("", Reads.Show(messages));
        Assert.NotNull(pack);
    }

    [Fact]
    public void Rules_and_bands_come_in_order_of_id()
    {
        var ids = Reads.Example.Rules.Select(r => r.Id).ToArray();
        Assert.Equal(ids.Order(StringComparer.Ordinal), ids);
        Assert.Equal(16, ids.Length);
        Assert.Equal(["tear-size.large", "tear-size.massive", "tear-size.medium", "tear-size.small"], ids[12..]);
    }

    [Fact]
    public void A_rule_keeps_what_its_file_says()
    {
        var rule = Reads.Example.Rules.Single(r => r.Id == "CUFF-030");
        Assert.Equal("(echo hypoechoic or anechoic) and not reangled persists → hold tear-depth; re-angle next", rule.Text);
        Assert.Equal(["trade"], rule.Sources.Select(s => s.Name));
        var first = Reads.Example.Rules.Single(r => r.Id == "CUFF-010");
        Assert.Equal<string>(["CUFF-020", "CUFF-021"], first.Over);
        Assert.Equal((new DateOnly(2026, 9, 1), new DateOnly(2027, 9, 1)), (first.Reviewed, first.ReviewBy));
        Assert.Equal("rules.yaml:2:9", first.DeclaredAt.ToString());
    }

    [Fact]
    public void A_rule_of_several_lines_points_into_its_lines()
    {
        var condition = (AllOf)Reads.Example.Rules.Single(r => r.Id == "CUFF-030").Condition;
        Assert.Equal("not reangled persists", condition.Parts[1].Location.Words);
    }

    [Fact]
    public void A_band_is_a_rule_and_a_value()
    {
        var band = Reads.Example.Rules.Single(r => r.Id == "tear-size.medium");
        Assert.Equal("tear-depth full-thickness and tear-length at least 1 cm and tear-length below 3 cm", ConditionText.Words(band.Condition));
        Assert.Equal("(tear-depth full-thickness) and tear-length from 1 cm to below 3 cm → tear-size medium", band.Text);
        Assert.Equal("The source prints 3 cm in two bands; this pack puts it in large.", band.Because);
        Assert.Equal("tear-size", band.ScaleName);
        Assert.False(band.IsPerStructure);
        var topic = Reads.Example.Symbols.Topics["tear-size"];
        Assert.Equal(["small", "medium", "large", "massive"], topic.Values.Select(v => v.Name));
        Assert.All(topic.Values, v => Assert.Equal("{tear-size} on the scale of Cofield ({tear-length}).", v.Says!.Written));
    }

    [Theory]
    [InlineData("tear-size.small", "9.99", true)]
    [InlineData("tear-size.small", "10", false)]
    [InlineData("tear-size.medium", "10", true)]
    [InlineData("tear-size.medium", "30", false)]
    [InlineData("tear-size.large", "30", true)]
    [InlineData("tear-size.large", "50", true)]
    [InlineData("tear-size.massive", "50", false)]
    [InlineData("tear-size.massive", "50.01", true)]
    public void Bands_begin_and_end_where_the_scale_says(string rule, string millimetres, bool isIn)
    {
        var scale = Reads.Example.Symbols.Scales["tear-size"];
        Assert.True(Rational.TryRead(millimetres, out var value));
        Assert.Equal(isIn, scale.Bands.Single(b => rule == $"tear-size.{b.Value}").Range.Contains(value));
    }

    [Fact]
    public void A_rule_for_a_topic_per_structure_is_bound_per_structure()
    {
        Assert.True(Reads.Example.Rules.Single(r => r.Id == "TEN-010").IsPerStructure);
        Assert.False(Reads.Example.Rules.Single(r => r.Id == "CUFF-010").IsPerStructure);
        Assert.False(Reads.Example.Rules.Single(r => r.Id == "CUFF-040").IsPerStructure);
    }

    [Fact]
    public void A_kind_has_the_findings_of_the_kind_it_is_like()
    {
        var kind = Reads.Example.Vocabulary.Kinds["cuff-tendon"];
        Assert.Equal(["defect-depth", "echo", "fluid", "reangled", "shadowing", "tear-length", "thickness"], kind.Findings.Keys);
        Assert.Same(Reads.Example.Vocabulary.Kinds["tendon"].Findings["echo"], kind.Findings["echo"]);
    }

    [Fact]
    public void Wording_is_text_and_places()
    {
        var says = Reads.Example.Symbols.Topics["tear-depth"].Find("full-thickness")!.Says!;
        Assert.Collection(
            says.Parts,
            part => Assert.Equal(new WordingText("Full-thickness tear of the "), part),
            part => Assert.Equal(new WordingPlace("", new SubjectSource(), ""), part),
            part => Assert.Equal((", ", true), part is WordingPlace { Source: FindingSource } place ? (place.Before, place.IsOptional) : default),
            part => Assert.Equal(new WordingText("."), part));
    }

    [Fact]
    public void The_manifest_is_kept()
    {
        var pack = Reads.Example;
        Assert.Equal(("example", "1.0.0", 1), (pack.Name, pack.Version, pack.Language));
        Assert.StartsWith(Pack.StandingNotice, pack.Caution, StringComparison.Ordinal);
        Assert.Null(pack.Approval);
        Assert.Equal(new Withdrawal("CUFF-090", new DateOnly(2026, 1, 31), "Replaced by CUFF-010."), Assert.Single(pack.Withdrawn));
        Assert.Equal(
            ["pack.yaml", "vocabulary.yaml", "references.yaml", "topics.yaml", "next-steps.yaml", "cautions.yaml", "measures.yaml", "scales.yaml", "rules.yaml", "protocols.yaml", "cases.yaml"],
            pack.Files.Select(f => f.Path));
    }

    [Fact]
    public void A_case_has_a_study_and_what_is_expected_of_it()
    {
        var first = Reads.Example.Cases.Single(c => c.Id == "CASE-CUFF-010");
        Assert.Equal("CASE-CUFF-010", first.Study.Key);
        Assert.Equal("14 mm", first.Study.Subjects[0].Findings.Find("tear-length")!.Value.ToString());
        Assert.Equal(["CUFF-010", "tear-size.medium"], first.Expect.Fires.Select(e => e.Text));
        Assert.True(first.Expect.Silent.IsDefault);
        Assert.Empty(Reads.Example.Cases.Single(c => c.Id == "CASE-CUFF-030").Expect.Concludes);
    }
}
