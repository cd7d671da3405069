using System.Diagnostics;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Packs.Documents;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Packs.Documents;

public class YamlReaderTests
{
    [Theory]
    [InlineData("FR1001", "a: \"⟦o⟧pen\nb: 1\n...\n", false)]
    [InlineData("FR1002", "a: ⟦*b⟧\n...\n", true)]
    [InlineData("FR1002", "a: ⟦&b c⟧\n...\n", true)]
    [InlineData("FR1003", "a: ⟦!b c⟧\n...\n", true)]
    [InlineData("FR1004", "a: 1\nb: 2\n⟦a⟧: 3\n...\n", true)]
    [InlineData("FR1005", "a: 1\n...\n⟦---⟧\nb: 2\n...\n", true)]
    [InlineData("FR1006", "a: 1\n⟦⟧", true)]
    [InlineData("FR1007", "a: b⟦\u0007⟧c\n...\n", true)]
    [InlineData("FR1007", "a: b⟦\0⟧c\n...\n", true)]
    [InlineData("FR1007", "a: \"b⟦\\e⟧c\"\n...\n", true)]
    [InlineData("FR1008", "a: b⟦\u202e⟧c\n...\n", true)]
    [InlineData("FR1008", "a: \"b⟦\\u2066⟧c\"\n...\n", true)]
    [InlineData("FR1009", "a:⟦\t⟧b\n...\n", true)]
    [InlineData("FR1012", "⟦[⟧a]: b\n...\n", true)]
    [InlineData("FR1013", "⟦%⟧YAML 1.2\n---\na: b\n...\n", true)]
    [InlineData("FR1014", "⟦?⟧ a\n: b\n...\n", true)]
    public void What_packs_do_without_is_underlined(string code, string marked, bool isReadOn)
    {
        var source = MarkedSource.Parse(marked);
        var (root, messages) = Read(source.Text);
        var message = Assert.Single(messages);
        Assert.Equal(code, message.Code);
        Assert.Equal(isReadOn, root is not null);
        if (code != "FR1001") Assert.Equal(MarkedSource.Show(source.Text, source.Spans), MarkedSource.Show(source.Text, [message.Location.Span]));
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n# nothing\n")]
    [InlineData("...\n")]
    [InlineData("---\n...\n")]
    public void A_file_that_says_nothing_is_one_message(string text) => Assert.Equal(["FR1011"], Read(text).Messages.Select(m => m.Code));

    [Fact]
    public void A_duplicate_key_points_at_both_places()
    {
        var message = Assert.Single(Read("a: 1\na: 2\n...\n").Messages);
        Assert.Equal(2, message.Location.Start.Line);
        Assert.Equal(1, Assert.Single(message.Related).Location.Start.Line);
    }

    [Fact]
    public void Many_tabs_are_one_message() =>
        Assert.Contains("and 2 more in this file", Assert.Single(Read("a:\tb\nc:\td\te\n...\n").Messages).Text);

    [Fact]
    public void A_bracket_without_its_partner_is_a_message_with_a_place()
    {
        var message = Assert.Single(Read("a: [1,\nb: 2").Messages);
        Assert.Equal("FR1001", message.Code);
        Assert.InRange(message.Location.Span.End, 1, 12);
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{a: ")]
    [InlineData("- ")]
    [InlineData("? ")]
    public void What_is_nested_without_end_stops_soon(string step)
    {
        var text = string.Concat(Enumerable.Repeat(step, 1_000_000));
        var watch = Stopwatch.StartNew();
        var (root, messages) = Read(text);
        Assert.Null(root);
        Assert.Contains(messages, m => m.Code == "FR1010");
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 5);
    }

    [Fact]
    public void Ever_deeper_indents_stop_soon()
    {
        var text = string.Concat(Enumerable.Range(0, 2_000).Select(i => $"{new string(' ', i)}a:\n"));
        var (root, messages) = Read(text);
        Assert.Null(root);
        Assert.Equal(["FR1010"], messages.Select(m => m.Code));
    }

    [Fact]
    public void Aliases_that_would_grow_are_refused_one_by_one()
    {
        var text = "a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\n...\n";
        Assert.Equal(Enumerable.Repeat("FR1002", 7), Read(text).Messages.Select(m => m.Code));
    }

    [Theory]
    [InlineData("a: b\n")]
    [InlineData("a:\n  - b\n  - c: d\n")]
    public void The_line_that_ends_a_file_may_be_followed_by_comments(string content) =>
        Assert.Empty(Read(content + "... # end\n# more\n").Messages);

    [Theory]
    [InlineData("a: one: two\n...\n", "a second `: ` stands on this line")]
    [InlineData("a: \"b\\qc\"\n...\n", "a backslash stands before a character that has no such form")]
    [InlineData("a: @b\n...\n", "a text begins with a character that it cannot begin with")]
    [InlineData("a: [b c\n...\n", "a list in brackets is not closed, or lacks a comma")]
    [InlineData("a: {b: \"c\" d: e}\n...\n", "a group in braces is not closed, or lacks a comma")]
    [InlineData("a:\n  b: 1\n c: 2\n...\n", "this line fits neither the line above nor the group around it")]
    [InlineData("a: \"b\n...\n", "a quotation is still open where the file ends")]
    public void Usual_mistakes_are_told_in_plain_words(string text, string expected) =>
        Assert.Equal(expected, Assert.Single(Read(text).Messages).Text);

    private static (DocumentNode? Root, IReadOnlyList<Message> Messages) Read(string text)
    {
        var messages = new MessageBag();
        var root = YamlReader.Read(new SourceText("a.yaml", text), LoadLimits.Default, messages);
        return (root, messages.Sorted());
    }
}
