using FindingRules.Model.Conditions;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Language;

public sealed class ConclusionTests
{
    [Theory]
    [InlineData("each tendon", "thickened", "tendon-state thickened")]
    [InlineData("each tendon", "tendon-state thickened", "tendon-state thickened")]
    [InlineData("each cuff-tendon", "thickened", "tendon-state thickened")]
    [InlineData("each tendon", "refer", "refer next")]
    [InlineData("each tendon", "refer next", "refer next")]
    [InlineData("each tendon", "evaluate subscapularis", "evaluate subscapularis")]
    [InlineData("each tendon", "position-overestimates", "caution position-overestimates")]
    [InlineData("each tendon", "caution position-overestimates", "caution position-overestimates")]
    [InlineData("each tendon", "hold tendon-state", "hold tendon-state")]
    [InlineData("each cuff-tendon", "hold tendon-state", "hold tendon-state")]
    [InlineData("study", "several-torn; refer", "cuff-state several-torn; refer next")]
    [InlineData("study", "refer;several-torn", "cuff-state several-torn; refer next")]
    [InlineData("each cuff-tendon", "thickened; full-thickness", "tear-depth full-thickness; tendon-state thickened")]
    [InlineData(
        "study", "probability from 10 % after negative foreign-body-accuracy",
        "probability from 0.1 after negative foreign-body-accuracy")]
    public void What_follows_is_read(string scope, string conclusions, string canonical)
    {
        var reading = Reading.Rule(scope, $"trauma → {conclusions}");

        Assert.Equal("", reading.Said);
        Assert.Equal(canonical, reading.Conclusions);
    }

    [Fact]
    public void A_value_of_two_topics_needs_its_topic()
    {
        var bare = Reading.Rule("each tendon", "shadowing → thickened", ExampleSymbols.Crowded);
        var full = Reading.Rule("each tendon", "shadowing → other-state thickened", ExampleSymbols.Crowded);

        Assert.Equal(["FR3402"], bare.Messages.Select(m => m.Code));
        Assert.Equal("other-state thickened", full.Conclusions);
    }

    [Fact]
    public void Mistakes_on_both_sides_of_the_arrow_are_told()
    {
        var reading = Reading.Rule("each tendon", "thicknes above 4 mm → thickend; refr");

        Assert.Equal(["FR3001", "FR3401", "FR3401"], reading.Messages.Select(m => m.Code));
    }

    [Fact]
    public void Every_sort_of_condition_is_in_the_cases_and_so_printed_both_ways()
    {
        var printed = string.Join('\n', CaseFile.Rows("conditions.cases").Select(r => CaseFile.Read(r).Result));
        var marks = new Dictionary<string, string>
        {
            [nameof(AllOf)] = " and ",
            [nameof(AnyOf)] = " or ",
            [nameof(Negation)] = "not ",
            [nameof(Quantified)] = " where (",
            [nameof(ValueStatement)] = " is ",
            [nameof(SignStatement)] = "own shadowing",
            [nameof(TopicStatement)] = " topic ",
            [nameof(ComparisonStatement)] = " >= ",
            [nameof(BetweenStatement)] = " between ",
            [nameof(ExtentStatement)] = " spans ",
            [nameof(AssessedStatement)] = " assessed",
            [nameof(NotAssessableStatement)] = " not assessable",
        };
        var sorts = typeof(Condition).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(Condition)) && !t.IsAbstract).Select(t => t.Name);

        Assert.Equal(sorts.Order(StringComparer.Ordinal), marks.Keys.Order(StringComparer.Ordinal));
        Assert.All(marks.Values, mark => Assert.Contains(mark, printed, StringComparison.Ordinal));
    }
}
