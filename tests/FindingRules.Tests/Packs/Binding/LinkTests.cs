using FindingRules.Model.Messages;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Packs.Binding;

/// <summary>How rules, scales and wording hang together.</summary>
public class LinkTests
{
    [Fact]
    public void A_circle_of_rules_and_topics_is_printed_as_a_path()
    {
        var message = Assert.Single(Rules(
            ("CUFF-010", "each cuff-tendon", "tendon-state thickened → full-thickness", ""),
            ("TEN-010", "each cuff-tendon", "thickness above 8 mm and tear-depth full-thickness → thickened", "")));
        Assert.Equal("FR3512", message.Code);
        Assert.Contains("`CUFF-010` → `tear-depth` → `TEN-010` → `tendon-state` → `CUFF-010`", message.Text);
    }

    [Fact]
    public void A_rule_that_holds_what_it_tests_is_a_circle() =>
        Assert.Equal(["FR3512"], Reads.Codes(Rules(
            ("CUFF-010", "each cuff-tendon", "fluid reaches bursal → full-thickness", ""),
            ("CUFF-011", "each cuff-tendon", "tear-depth full-thickness → hold tear-depth", ""))));

    [Fact]
    public void Yielding_and_testing_can_close_a_circle() =>
        Assert.Equal(["FR3512"], Reads.Codes(Rules(
            ("CUFF-010", "each cuff-tendon", "fluid reaches bursal → full-thickness", ""),
            ("CUFF-011", "each cuff-tendon", "tear-depth full-thickness → refer", "over: [CUFF-010]"))));

    [Fact]
    public void A_topic_tested_at_another_structure_counts_as_well() =>
        Assert.Equal(["FR3512"], Reads.Codes(Rules(
            ("CUFF-010", "each cuff-tendon", "fluid reaches bursal and not (ipsilateral biceps displaced) → full-thickness", ""),
            ("BIC-001", "each biceps", "ipsilateral subscapularis tear-depth full-thickness → displaced", ""))));

    [Fact]
    public void A_withdrawn_rule_closes_no_circle()
    {
        var pack = ExamplePack.Plain.With("rules", RulesText(
            ("CUFF-010", "each cuff-tendon", "fluid reaches bursal → full-thickness", ""),
            ("CUFF-090", "each cuff-tendon", "tear-depth full-thickness → hold tear-depth", "")));
        Assert.Empty(Reads.Pack(pack).Messages);
    }

    [Fact]
    public void Long_chains_are_no_circles()
    {
        var rules = Enumerable.Range(0, 500).Select(i => (
            $"CUFF-{i:000}", "each cuff-tendon", $"fluid reaches bursal and thickness above {i / 100m + 1:0.00} mm → refer", i < 499 ? $"over: [CUFF-{i + 1:000}]" : ""));
        Assert.Empty(Rules([.. rules]));
    }

    [Fact]
    public void Two_circles_are_two_messages() =>
        Assert.Equal(["FR3511", "FR3511"], Reads.Codes(Rules(
            ("CUFF-001", "each cuff-tendon", "fluid reaches bursal → refer", "over: [CUFF-002]"),
            ("CUFF-002", "each cuff-tendon", "fluid reaches articular → refer", "over: [CUFF-001]"),
            ("CUFF-003", "each cuff-tendon", "fluid reaches intrasubstance → refer", "over: [CUFF-003]"))));

    [Fact]
    public void A_band_can_be_named_where_a_rule_can() =>
        Assert.Empty(Rules(
            ("CUFF-001", "each cuff-tendon", "echo anechoic → refer", "over: [tear-size.small]"),
            ("CUFF-002", "each cuff-tendon", "fluid reaches bursal → full-thickness", "")));

    [Theory]
    [InlineData("below 1 cm", "above 1 cm to 3 cm", "above 3 cm", "FR3521", "1 cm,")]
    [InlineData("at most 1 cm", "from 1 cm to 3 cm", "above 3 cm", "FR3522", "puts 1 cm in")]
    [InlineData("below 1 cm", "from 1 cm to below 3 cm", "above 3.5 cm", "FR3521", "values from 3 cm to at most 3.5 cm")]
    [InlineData("below 2 cm", "from 1 cm to below 3 cm", "at least 3 cm", "FR3522", "values from 1 cm to below 2 cm")]
    [InlineData("from 0.5 cm to below 1 cm", "from 1 cm to below 3 cm", "at least 3 cm", "FR3523", "first band")]
    [InlineData("below 1 cm", "at least 3 cm", "from 1 cm to below 3 cm", "FR3520", "`large` lies below `medium`")]
    public void Bands_must_cover_every_value_once_and_in_order(string small, string medium, string large, string code, string words)
    {
        var scale = $"scales:\n  tear-size:\n    for: each cuff-tendon\n    of: tear-length\n    source: [trade]\n    bands:\n"
            + $"      - small: {small}\n      - medium: {medium}\n      - large: {large}\n...\n";
        var message = Assert.Single(Reads.Pack(ExamplePack.Plain.With("scales", scale)).Messages.Where(m => m.Severity == Severity.Error));
        Assert.Equal(code, message.Code);
        Assert.Contains(words, message.Text);
    }

    [Theory]
    [InlineData("The {subject}{, tear-length}", null)]
    [InlineData("{(tear-length)} {depth-share} {tear-size} {modality} {position}", null)]
    [InlineData("{}", "FR1402")]
    [InlineData("{tear-length thickness}", "FR1402")]
    [InlineData("{subject", "FR1401")]
    [InlineData("subject}", "FR1401")]
    [InlineData("{a {subject}}", "FR1401")]
    [InlineData("{tear-lenght}", "FR3530")]
    public void Places_of_a_caution_are_what_any_rule_may_have(string says, string? code)
    {
        var text = $"cautions:\n  position-overestimates:\n    says: \"{says}\"\n...\n";
        Assert.Equal(code is null ? [] : [code], Reads.Codes(Reads.Pack(ExamplePack.Plain.With("cautions", text)).Messages));
    }

    [Fact]
    public void Places_of_a_topic_are_those_of_its_scope()
    {
        var topics = ExamplePack.Plain.TextOf("topics").Replace("Displaced {subject}.", "Displaced {subject}{, tear-length}.", StringComparison.Ordinal);
        var message = Assert.Single(Reads.Pack(ExamplePack.Plain.Replace("topics", topics)).Messages);
        Assert.Equal(("FR3530", "tear-length"), (message.Code, message.Location.Words));
    }

    private static IReadOnlyList<Message> Rules(params (string Id, string For, string Rule, string More)[] rules) =>
        Reads.Pack(ExamplePack.Plain.With("rules", RulesText(rules))).Messages;

    private static string RulesText(params (string Id, string For, string Rule, string More)[] rules) =>
        $"rules:\n{string.Concat(rules.Select(r => $"  - id: {r.Id}\n    for: {r.For}\n    rule: {r.Rule}\n    because: So.\n    source: [trade]\n{(r.More == "" ? "" : $"    {r.More}\n")}"))}...\n";
}
