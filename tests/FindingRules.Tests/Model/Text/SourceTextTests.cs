using CsCheck;
using FindingRules.Model.Text;
using Xunit;

namespace FindingRules.Tests.Model.Text;

public sealed class SourceTextTests
{
    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Lines_end_with_any_line_end(string end)
    {
        var source = new SourceText("rules.yaml", $"one{end}two{end}{end}four");
        Assert.Equal(4, source.LineCount);
        Assert.Equal(["one", "two", "", "four"], Enumerable.Range(1, 4).Select(source.LineAt));
        Assert.Equal(new LinePosition(2, 1), source.PositionOf(3 + end.Length));
        Assert.Equal(new LinePosition(4, 5), source.PositionOf(source.Content.Length));
    }

    [Fact]
    public void Columns_count_code_units_from_one()
    {
        var source = new SourceText("rules.yaml", "a🦴b");
        Assert.Equal(new LinePosition(1, 4), source.PositionOf(source.Content.IndexOf('b', StringComparison.Ordinal)));
    }

    [Fact]
    public void A_position_outside_is_the_nearest_inside()
    {
        var source = new SourceText("rules.yaml", "ab\nc");
        Assert.Equal(new LinePosition(1, 1), source.PositionOf(-5));
        Assert.Equal(new LinePosition(2, 2), source.PositionOf(99));
        Assert.Equal(new LinePosition(1, 1), new SourceText("empty.yaml", "").PositionOf(0));
    }

    [Fact]
    public void Positions_lead_back_to_the_offset() => Gen.String[Gen.Char["ab\r\n"], 0, 20].Sample(content =>
    {
        var source = new SourceText("any", content);
        for (var offset = 0; offset <= content.Length; offset++)
        {
            var position = source.PositionOf(offset);
            Assert.InRange(position.Line, 1, source.LineCount);
            Assert.Equal(offset, StartOf(source, position.Line) + position.Column - 1);
        }
    });

    [Fact]
    public void A_location_names_file_line_and_column_and_knows_its_words()
    {
        var source = new SourceText("rules.yaml", "a\n  echo");
        var location = new Location(source, TextSpan.Between(4, 8));
        Assert.Equal("rules.yaml:2:3", location.ToString());
        Assert.Equal("echo", location.Words);
    }

    [Fact]
    public void Spans_join_and_never_have_a_negative_length()
    {
        Assert.Equal(new TextSpan(2, 8), new TextSpan(2, 3).Through(new TextSpan(7, 3)));
        Assert.Equal(new TextSpan(2, 8), new TextSpan(7, 3).Through(new TextSpan(2, 3)));
        Assert.Equal(new TextSpan(5, 0), TextSpan.Between(5, 1));
    }

    private static int StartOf(SourceText source, int line) =>
        Enumerable.Range(0, source.Content.Length + 1).First(o => source.PositionOf(o).Line == line);
}
