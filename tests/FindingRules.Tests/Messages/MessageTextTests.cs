using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Messages.Rendering;
using FindingRules.Model.Text;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Messages;

public sealed class MessageTextTests
{
    private const string More = "    More: findingrules code FR4002\n";

    [Fact]
    public void A_message_shows_place_code_text_line_carets_and_label() => Assert.Equal(
        "cases.yaml:2:10  error FR4002  `CASE-1` expects `refer` under `next`, which did not come\n"
        + "    next: [refer]\n"
        + "           ^^^^^ nothing of the sort came\n"
        + More,
        Shown("expect:\n  next: [⟦refer⟧]\n"));

    [Fact]
    public void A_tab_takes_four_columns() => Assert.Equal(["a    b", "     ^"], Lines("a\t⟦b⟧"));

    [Fact]
    public void What_stands_before_the_words_of_a_line_is_left_out() => Assert.Equal(["rule: x", "      ^"], Lines("        rule: ⟦x⟧"));

    [Fact]
    public void A_wide_character_takes_two_columns() => Assert.Equal(["腱 b", "^^"], Lines("⟦腱⟧ b"));

    [Fact]
    public void A_combined_character_takes_one_column() => Assert.Equal(["e\u0301 b", "  ^"], Lines("e\u0301 ⟦b⟧"));

    [Fact]
    public void A_place_without_words_has_one_caret() => Assert.Equal(["ab", "  ^"], Lines("ab⟦⟧"));

    [Fact]
    public void A_place_over_several_lines_says_where_it_ends() => Assert.Equal(["a b", "  ^ …to line 3"], Lines("a ⟦b\nc\nd⟧ e"));

    [Fact]
    public void A_line_with_an_empty_place_at_its_end_of_file_is_shown() => Assert.Equal(["", "^"], Lines("a\n⟦⟧"));

    [Fact]
    public void A_long_line_is_cut_around_the_words()
    {
        var lines = Lines($"{new string('a', 5_000)} ⟦wrong⟧ {new string('b', 5_000)}");
        Assert.StartsWith("…aaa", lines[0], StringComparison.Ordinal);
        Assert.EndsWith("bbb…", lines[0], StringComparison.Ordinal);
        Assert.InRange(lines[0].Length, 100, 160);
        Assert.Equal(lines[0].IndexOf("wrong", StringComparison.Ordinal), lines[1].IndexOf('^'));
        Assert.Equal("^^^^^", lines[1].Trim());
    }

    [Fact]
    public void A_long_line_cut_inside_a_surrogate_pair_keeps_it_whole()
    {
        var lines = Lines($"{string.Concat(Enumerable.Repeat("🩻", 401))}⟦x⟧");
        Assert.DoesNotContain('\uFFFD', lines[0]);
    }

    [Fact]
    public void What_an_author_wrote_cannot_steer_the_terminal()
    {
        var shown = Shown("⟦\e[2J\u202Eabc⟧");
        Assert.DoesNotContain('\e', shown);
        Assert.DoesNotContain('\u202E', shown);
        Assert.Contains("␛[2J", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_not_there_has_no_line_and_no_carets() => Assert.Equal(
        "x.json  error FR0002  there is no file or folder `x.json`\n"
        + "    did you mean `y.json`?\n"
        + "    More: findingrules code FR0002\n",
        Text([ToolMessages.FileNotFound("x.json", "y.json")]));

    [Fact]
    public void A_line_of_many_studies_has_its_own_number()
    {
        var text = new SourceText("march.ndjson", "{ \"study\": 7 }", firstLine: 40);
        var shown = Text([CaseMessages.RuleWithoutCase(new Location(text, new TextSpan(11, 1), "/study"), "X")]);
        Assert.StartsWith("march.ndjson:40:12  doubt FR4010", shown, StringComparison.Ordinal);
        Assert.Contains("\n    At: /study\n", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fix_and_related_places_follow()
    {
        var source = new SourceText("a.yaml", "one two\n");
        var message = CaseMessages.RuleWithoutCase(new Location(source, new TextSpan(0, 3)), "ONE") with
        {
            Related = [new RelatedPlace(new Location(source, new TextSpan(4, 3)), "first declared here")],
            Fix = new Fix("write `two`", new Location(source, new TextSpan(0, 3)), "two"),
        };
        Snapshot.Match(Text([message]));
    }

    [Fact]
    public void Each_page_is_named_once()
    {
        var at = new SourceText("a.yaml", "x").Whole;
        var shown = Text([CaseMessages.RuleWithoutCase(at, "A"), CaseMessages.RuleWithoutCase(at, "B"), CaseMessages.NoCases(at)]);
        Assert.Equal(2, shown.Split("More:").Length - 1);
    }

    [Fact]
    public void Of_too_many_messages_the_errors_are_kept()
    {
        var at = new SourceText("a.yaml", "x").Whole;
        var doubts = Enumerable.Range(0, 150).Select(i => CaseMessages.RuleWithoutCase(at, $"D-{i}"));
        var error = CaseMessages.RuleCameOtherwise(at, "CASE-1", "E", "fire", "it is false of study");
        var shown = Text([.. doubts, error]);
        Assert.Contains("error FR4001", shown, StringComparison.Ordinal);
        Assert.Equal(99, shown.Split("doubt FR4010").Length - 1);
        Assert.EndsWith("\nand 51 more\n", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void Messages_are_counted_by_severity()
    {
        var at = new SourceText("a.yaml", "x").Whole;
        var error = CaseMessages.RuleCameOtherwise(at, "CASE-1", "E", "fire", "it is false of study");
        Assert.Equal("2 errors, 1 doubt", MessageText.Count([error, CaseMessages.NoCases(at), error]));
        Assert.Equal("", MessageText.Count([]));
    }

    [Fact]
    public void Colour_comes_only_where_it_is_wanted()
    {
        var at = new SourceText("a.yaml", "x").Whole;
        Assert.Contains("\e[1;33mdoubt FR4011\e[0m", Text([CaseMessages.NoCases(at)], new MessageStyle { HasColour = true }), StringComparison.Ordinal);
        Assert.DoesNotContain('\e', Text([CaseMessages.NoCases(at)]));
    }

    private static string[] Lines(string marked) =>
        [.. ShownWithoutLabel(marked).Split('\n')[1..3].Select(l => l[Math.Min(4, l.Length)..])];

    private static string ShownWithoutLabel(string marked)
    {
        var source = MarkedSource.Parse(marked);
        var at = new Location(new SourceText("cases.yaml", source.Text), source.Span);
        return Text([CaseMessages.CameUnexpected(at, "CASE-1", "next", "refer", [])]);
    }

    private static string Shown(string marked)
    {
        var source = MarkedSource.Parse(marked);
        var at = new Location(new SourceText("cases.yaml", source.Text), source.Span);
        return Text([CaseMessages.DidNotCome(at, "CASE-1", "next", "refer", [])]);
    }

    private static string Text(IReadOnlyList<Message> messages, MessageStyle? style = null)
    {
        using var to = new StringWriter { NewLine = "\n" };
        MessageText.Write(to, messages, style ?? MessageStyle.Plain);
        return to.ToString();
    }
}
