using FindingRules.Model.Text;
using Xunit;

namespace FindingRules.Tests.Model.Text;

public sealed class MappedTextTests
{
    private static readonly SourceText _file = new("rules.yaml", "rule: >\n  echo\n  anechoic\n");

    // The value of the folded scalar: its line break has become a blank.
    private static readonly MappedText _folded = new(
        _file, "echo anechoic", [.. Enumerable.Range(10, 4), 14, .. Enumerable.Range(17, 8), 25]);

    [Fact]
    public void A_word_is_found_where_it_stands_in_the_file()
    {
        Assert.Equal("anechoic", _folded.At(new TextSpan(5, 8)).Words);
        Assert.Equal(new LinePosition(3, 3), _folded.At(new TextSpan(5, 8)).Start);
    }

    [Fact]
    public void A_span_ends_where_its_last_character_ends_and_not_in_the_next_lines_indent() =>
        Assert.Equal("echo\n", _folded.At(new TextSpan(0, 5)).Words);

    [Fact]
    public void A_span_outside_is_cut_to_what_there_is()
    {
        Assert.Equal("anechoic", _folded.At(new TextSpan(5, 99)).Words);
        Assert.Equal(25, _folded.At(new TextSpan(50, 3)).Span.Start);
    }

    [Fact]
    public void A_slice_stands_where_it_was_taken_from()
    {
        var slice = MappedText.Slice(_file, new TextSpan(10, 4));
        Assert.Equal("echo", slice.Text);
        Assert.Equal(new TextSpan(11, 2), slice.At(new TextSpan(1, 2)).Span);
        Assert.Equal(_file.Content, MappedText.Verbatim(_file).Whole.Words);
    }

    [Fact]
    public void There_must_be_an_offset_for_each_character() =>
        Assert.Throws<ArgumentException>(() => new MappedText(_file, "echo", [0, 1, 2, 3]));
}
