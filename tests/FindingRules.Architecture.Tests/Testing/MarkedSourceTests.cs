using FindingRules.Model.Text;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Architecture.Tests.Testing;

public sealed class MarkedSourceTests
{
    [Fact]
    public void Marks_become_spans_and_leave_the_text()
    {
        var marked = MarkedSource.Parse("a ⟦b ⟦c⟧⟧ ⟦⟧d");
        Assert.Equal("a b c d", marked.Text);
        Assert.Equal([new TextSpan(2, 3), new TextSpan(4, 1), new TextSpan(6, 0)], marked.Spans.AsEnumerable());
    }

    [Theory]
    [InlineData("a ⟦b ⟦c⟧⟧ ⟦⟧d")]
    [InlineData("⟦a⟧⟦b⟧")]
    public void Showing_puts_the_marks_back(string written)
    {
        var marked = MarkedSource.Parse(written);
        Assert.Equal(written, MarkedSource.Show(marked.Text, marked.Spans));
    }

    [Theory]
    [InlineData("a⟧")]
    [InlineData("⟦a")]
    public void Marks_must_be_in_pairs(string written) => Assert.Throws<FormatException>(() => MarkedSource.Parse(written));
}
