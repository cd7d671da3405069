using Xunit;

namespace FindingRules.Tests.Language;

/// <summary>What the conditions of <c>conditions.cases</c> mean, and that their words have that meaning again.</summary>
public sealed class ConditionCaseTests
{
    public static TheoryData<string> Rows => [.. CaseFile.Rows("conditions.cases")];

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_condition_has_this_meaning(string row)
    {
        var given = CaseFile.Read(row);

        var reading = Reading.Condition(given.Scope, given.Text, given.Symbols);

        Assert.Equal("", reading.Said);
        Assert.Equal(given.Result, reading.Canonical);
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Its_words_read_again_have_the_same_meaning(string row)
    {
        var given = CaseFile.Read(row);
        var words = Reading.Condition(given.Scope, given.Text, given.Symbols).Words;

        var again = Reading.Condition(given.Scope, words!, given.Symbols);

        Assert.Equal("", again.Said);
        Assert.Equal(given.Result, again.Canonical);
        Assert.Equal(words, again.Words);
    }
}
