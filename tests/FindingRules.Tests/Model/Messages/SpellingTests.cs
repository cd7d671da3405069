using CsCheck;
using FindingRules.Model.Messages;
using Xunit;

namespace FindingRules.Tests.Model.Messages;

public sealed class SpellingTests
{
    private static readonly string[] _names = ["thickness", "tear-length", "echo", "fluid", "reangled", "gap", "position", "surface"];
    private static readonly Gen<string> _word = Gen.String[Gen.Char["abc-"], 0, 8];

    [Theory]
    [InlineData("thicknes", "thickness")]
    [InlineData("thikcness", "thickness")]
    [InlineData("tear-lenght", "tear-length")]
    [InlineData("THICKNESS", "thickness")]
    [InlineData("Gap", "gap")]
    [InlineData("ecco", "echo")]
    public void Suggests_the_closest_name(string found, string expected) => Assert.Equal(expected, Spelling.Closest(found, _names));

    [Theory]
    [InlineData("retraction")]
    [InlineData("ec")]
    [InlineData("eccc")]
    [InlineData("gxx")]
    [InlineData("")]
    public void Suggests_nothing_rather_than_nonsense(string found) => Assert.Null(Spelling.Closest(found, _names));

    [Fact]
    public void Of_two_that_are_as_close_the_first_in_order_is_suggested() =>
        Assert.Equal("abcdea", Spelling.Closest("abcdex", ["abcdec", "abcdea", "abcdeb"]));

    [Fact]
    public void The_same_letters_in_other_capitals_win_over_a_name_that_comes_first() =>
        Assert.Equal("gap", Spelling.Closest("GAP", ["GAB", "gap"]));

    [Fact]
    public void Suggestions_lie_within_the_bound() => Gen.Select(_word, _word).Sample((found, name) =>
    {
        if (Spelling.Closest(found, [name]) is null) return;
        Assert.True(Spelling.Distance(found, name) <= Math.Min(2, found.Length / 3) || string.Equals(found, name, StringComparison.OrdinalIgnoreCase));
    });

    [Fact]
    public void Distance_is_the_same_both_ways_and_zero_only_of_the_same() => Gen.Select(_word, _word).Sample((a, b) =>
    {
        Assert.Equal(Spelling.Distance(a, b), Spelling.Distance(b, a));
        Assert.Equal(a == b, Spelling.Distance(a, b) == 0);
        Assert.InRange(Spelling.Distance(a, b), Math.Abs(a.Length - b.Length), Math.Max(a.Length, b.Length));
    });

    [Theory]
    [InlineData("abcd", "abdc", 1)]
    [InlineData("abcd", "abc", 1)]
    [InlineData("abcd", "xbcy", 2)]
    [InlineData("", "abc", 3)]
    public void Distance_counts_edits_and_swapped_neighbours(string a, string b, int expected) => Assert.Equal(expected, Spelling.Distance(a, b));

    [Fact]
    public void Help_names_the_closest_else_lists_few_else_says_nothing()
    {
        Assert.Equal("did you mean `echo`?", Spelling.Help("ecco", _names));
        Assert.Equal("one of `left` or `right`", Spelling.Help("up", ["left", "right"]));
        Assert.Null(Spelling.Help("retraction", _names));
        Assert.Null(Spelling.Help("retraction", []));
    }

    [Fact]
    public void Lists_read_as_a_sentence()
    {
        Assert.Equal("", Spelling.List([]));
        Assert.Equal("`a`", Spelling.List(["a"]));
        Assert.Equal("`a`, `b` and `c`", Spelling.List(["a", "b", "c"], "and"));
    }
}
