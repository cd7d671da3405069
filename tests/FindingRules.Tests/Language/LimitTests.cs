using System.Diagnostics;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using Xunit;

namespace FindingRules.Tests.Language;

/// <summary>Size and depth end in a message, at once, and never in a crash.</summary>
public sealed class LimitTests
{
    private const string Scope = "each cuff-tendon";

    [Fact]
    public void Brackets_at_the_limit_are_read_and_one_more_is_not()
    {
        var most = LoadLimits.Default.RuleNesting;

        Assert.Equal("own shadowing", Reading.Condition(Scope, Nested("shadowing", most)).Canonical);
        Assert.Equal("own thickness > 1 mm", Reading.Condition(Scope, $"{Nested("thickness", most)} above 1 mm").Canonical);
        Assert.StartsWith("FR2002", Reading.Condition(Scope, Nested("shadowing", most + 1)).Said, StringComparison.Ordinal);
    }

    [Fact]
    public void Three_counts_inside_each_other_are_read_and_one_more_is_not()
    {
        var text = "shadowing";
        for (var i = 0; i < Quantified.MostNested; i++) text = $"no tendon where ({text})";

        Assert.Equal("", Reading.Condition("each tendon", text).Said);
        Assert.StartsWith("FR3111", Reading.Condition("each tendon", $"no tendon where ({text})").Said, StringComparison.Ordinal);
    }

    [Fact]
    public void Operators_at_the_limit_are_read_and_one_more_is_not()
    {
        var sum = string.Join("+", Enumerable.Repeat("1", 255));

        Assert.Equal("", Reading.Condition("study", $"{sum}+1 > 1").Said);
        Assert.StartsWith("FR2003", Reading.Condition("study", $"{sum}+1+1 > 1").Said, StringComparison.Ordinal);
    }

    [Fact]
    public void Characters_at_the_limit_are_read_and_one_more_is_not()
    {
        var most = LoadLimits.Default.RuleCharacters;

        Assert.Equal("", Reading.Condition(Scope, "shadowing".PadRight(most)).Said);
        Assert.StartsWith("FR2001", Reading.Condition(Scope, "shadowing".PadRight(most + 1)).Said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("(")]
    [InlineData("shadowing and (")]
    [InlineData("1 + (")]
    [InlineData("any tendon where (")]
    [InlineData("no tendon where (shadowing and ")]
    public void A_broken_text_at_the_limit_of_depth_is_answered_quickly(string opening)
    {
        var text = string.Concat(Enumerable.Repeat(opening, LoadLimits.Default.RuleNesting))[..Math.Min(1_999, opening.Length * 64)];
        var watch = Stopwatch.StartNew();

        Reading.Condition("each tendon", text).AssertAnswered();
        Reading.Condition("each tendon", text + "§").AssertAnswered();
        Reading.Condition("each tendon", text + "shadowing shadowing").AssertAnswered();

        // A grammar that tries a part twice needs years for this; the bound only has to tell the two apart.
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(5), $"{watch.Elapsed}");
    }

    [Fact]
    public void Limits_raised_beyond_the_stack_end_in_a_message()
    {
        var raised = new LoadLimits { RuleCharacters = 1_000_000, RuleNesting = 400_000, RuleOperators = 1_000_000 };

        var deep = Reading.Condition(Scope, Nested("shadowing", 200_000), limits: raised);

        Assert.StartsWith("FR2002", deep.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void Twice_the_text_takes_about_twice_the_allocation()
    {
        static long Cost(int parts)
        {
            var text = string.Join(" and ", Enumerable.Repeat("echo anechoic or hypoechoic", parts));
            Reading.Condition(Scope, text);
            var before = GC.GetAllocatedBytesForCurrentThread();
            Assert.Equal("", Reading.Condition(Scope, text).Said);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        Assert.True(Cost(60) < 3 * Cost(30));
    }

    private static string Nested(string inner, int depth) => new string('(', depth) + inner + new string(')', depth);
}
