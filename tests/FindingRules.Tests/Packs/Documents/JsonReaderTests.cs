using System.Diagnostics;
using CsCheck;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Packs.Documents;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Packs.Documents;

public class JsonReaderTests
{
    [Fact]
    public void Every_value_has_its_place_and_pointer()
    {
        var source = MarkedSource.Parse("""{ "é→😀": [ 1, { "a/b~": ⟦"x→y"⟧ } ] }""");
        var root = (MappingNode)Read(source.Text).Root!;
        var inner = (MappingNode)((ListNode)root.Entries[0].Value).Items[1];
        var location = inner.Find("a/b~")!.Location;
        Assert.Equal(source.Span, location.Span);
        Assert.Equal("/é→😀/1/a~1b~0", location.Pointer);
    }

    [Theory]
    [InlineData("{ \"a\": 1, ⟦}⟧", "a comma stands before the closing bracket")]
    [InlineData("[1, 2, ⟦]⟧", "a comma stands before the closing bracket")]
    [InlineData("{ ⟦/⟧/ why\n \"a\": 1 }", "a comment stands here; JSON has none")]
    [InlineData("{ \"a\": 1 ⟦⟧", "the study stops before it is complete")]
    [InlineData("{ \"a\": \"b⟦⟧", "the study stops before it is complete")]
    [InlineData("⟦ \n⟧", "nothing was sent")]
    [InlineData("{ ⟦'⟧a': 1 }", "`'` does not belong here")]
    [InlineData("{ \"a\": ⟦N⟧aN }", "`N` does not belong here")]
    [InlineData("{ \"é\": 1 ⟦\"⟧b\": 2 }", "`\"` does not belong here")]
    [InlineData("{ \"a\": 1 }\n⟦{⟧}", "`{` does not belong here")]
    [InlineData("{ \"a\": \"b⟦\n⟧c\" }", "the control character U+000A stands inside a text, or where none may")]
    [InlineData("{ \"a\": ⟦\"\\ud83d\"⟧ }", "a `\\u` escape here is half of a character")]
    public void What_is_not_JSON_is_told_in_plain_words(string marked, string expected)
    {
        var source = MarkedSource.Parse(marked);
        var message = Assert.Single(Read(source.Text).Messages);
        Assert.Equal(("FR5001", expected), (message.Code, message.Text));
        Assert.Equal(MarkedSource.Show(source.Text, source.Spans), MarkedSource.Show(source.Text, [message.Location.Span]));
    }

    [Fact]
    public void A_member_written_twice_points_at_both_places()
    {
        var message = Assert.Single(Read("""{ "a": 1, "b": { "c": 1, "c": 2 } }""").Messages);
        Assert.Equal("FR5002", message.Code);
        Assert.Equal(18, Assert.Single(message.Related).Location.Start.Column);
    }

    [Fact]
    public void Members_written_twice_are_found_among_many()
    {
        var members = string.Join(", ", Enumerable.Range(0, 40).Append(7).Append(39).Select(i => $"\"m{i}\": {i}"));
        Assert.Equal(["FR5002", "FR5002"], Read($"{{ {members} }}").Messages.Select(m => m.Code));
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{\"a\":")]
    public void What_is_nested_without_end_stops_soon(string step)
    {
        var watch = Stopwatch.StartNew();
        var read = Read(string.Concat(Enumerable.Repeat(step, 100_000)));
        Assert.Equal(["FR5003"], read.Messages.Select(m => m.Code));
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 2);
    }

    [Fact]
    public void A_study_of_too_many_bytes_is_not_read() =>
        Assert.Equal(["FR0004"], Read($"\"{new string('é', 600_000)}\"").Messages.Select(m => m.Code));

    [Fact]
    public void Any_text_is_read_or_told_and_never_throws() =>
        Gen.String[Gen.Char["{}[]\",:\\/ntu0123456789.-eé\ud83d\ude00\u2028\n "], 0, 40].Sample(text =>
        {
            var (root, messages) = Read(text);
            Assert.True(root is not null || messages.Count > 0);
            Assert.All(messages, m => Assert.InRange(m.Location.Span.End, 0, text.Length));
        }, iter: 5_000);

    private static (DocumentNode? Root, IReadOnlyList<Message> Messages) Read(string text)
    {
        var messages = new MessageBag();
        var root = JsonReader.Read(new SourceText("study.json", text), LoadLimits.Default, messages);
        return (root, messages.Sorted());
    }
}
