using System.Text.RegularExpressions;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Language;

/// <summary>The rules of the design and of the example pack read as they stand.</summary>
public sealed partial class ExampleRuleTests
{
    [Theory]
    [InlineData(
        "each cuff-tendon", "fluid spans bursal to articular surface → full-thickness",
        "own fluid spans bursal to articular", "tear-depth full-thickness")]
    [InlineData("each biceps-tendon", "biceps subluxed → evaluate subscapularis", "own position is subluxed", "evaluate subscapularis")]
    [InlineData(
        "study", "radiograph negative and suspected wood or glass → ultrasound next",
        "study radiograph is negative and study suspected is glass|wood", "ultrasound next")]
    public void The_three_rules_of_the_design_read_as_they_stand(string scope, string rule, string canonical, string conclusions)
    {
        var reading = Reading.Rule(scope, rule);

        Assert.Equal("", reading.Said);
        Assert.Equal(canonical, reading.Canonical);
        Assert.Equal(conclusions, reading.Conclusions);
    }

    [Fact]
    public void Every_rule_of_the_example_pack_reads()
    {
        var rules = RuleOfPack().Matches(ExamplePack.Plain.TextOf("rules"));

        Assert.Equal(12, rules.Count);
        foreach (Match rule in rules)
        {
            var reading = Reading.Rule(rule.Groups["scope"].Value, rule.Groups["rule"].Value);
            Assert.True(reading.Said.Length == 0, $"{rule.Groups["rule"].Value}\n{reading.Said}");
        }
    }

    [GeneratedRegex(@"    for: (?<scope>.+)\n    rule: (?:\|\n)?(?<rule>(?:.|\n      )+)\n    because:")]
    private static partial Regex RuleOfPack();
}
