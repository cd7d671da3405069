using System.Text.RegularExpressions;
using FindingRules.Model.Messages;
using Xunit;

namespace FindingRules.Architecture.Tests.Messages;

/// <summary>How messages and their pages are worded: short, in the author's own words, in one spelling.</summary>
public sealed partial class WordingTests
{
    public static TheoryData<string> Codes => [.. MessagePages.Codes];

    [Fact]
    public void A_message_is_one_sentence_that_starts_small_and_has_no_stop() =>
        AssertOfEverySentence(sentence => Malformed().IsMatch(sentence) || sentence.Count(c => c == '`') % 2 != 0);

    [Fact]
    public void A_message_uses_the_words_of_its_readers() =>
        AssertOfEverySentence(sentence => MakersWord().IsMatch(OutsideBackticks(sentence)) || TypeName().IsMatch(sentence));

    [Fact]
    public void A_message_is_in_one_spelling() => AssertOfEverySentence(AmericanSpelling().IsMatch);

    private static void AssertOfEverySentence(Func<string, bool> isWrong) =>
        Expect.None(Catalogue.All.SelectMany(f => f.Sentences.Where(isWrong).Distinct().Select(s => $"{f.Name}: {s}")));

    [Theory]
    [MemberData(nameof(Codes))]
    public void A_page_has_the_parts_that_every_page_has(string code)
    {
        var page = MessagePages.Find(code)!;
        Assert.Matches($"^# {code} [a-z`0-9][^\n]*[^.\n]\n\n[^#\n]", page);
        var headings = Regex.Matches(WithoutBlocks(page), "^## (.*)$", RegexOptions.Multiline).Select(m => m.Groups[1].Value);
        Assert.Equal(["Example", "Mend", "Why"], headings);
        Assert.Matches("## Why\n[^#]*[A-Za-z]", page);
        Assert.EndsWith("\n", page, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void A_page_uses_the_words_of_its_readers(string code)
    {
        var prose = OutsideBackticks(WithoutBlocks(MessagePages.Find(code)!));
        Assert.DoesNotMatch(MakersWord(), prose);
        Assert.DoesNotMatch(AmericanSpelling(), prose);
    }

    [Theory]
    [InlineData("unexpected token", true)]
    [InlineData("the value is null", true)]
    [InlineData("this invalid date", true)]
    [InlineData("`null` is not a value", false)]
    [InlineData("the note of annulled rules", false)]
    public void Makers_words_are_found(string sentence, bool isFound) =>
        Assert.Equal(isFound, MakersWord().IsMatch(OutsideBackticks(sentence)));

    [Theory]
    [InlineData("the color of a fiber", true)]
    [InlineData("the colour of a fibre in a catalogue, analysed", false)]
    public void American_spelling_is_found(string sentence, bool isFound) =>
        Assert.Equal(isFound, AmericanSpelling().IsMatch(sentence));

    [Theory]
    [InlineData("Starts large", true)]
    [InlineData("has a stop.", true)]
    [InlineData("is two. Sentences", true)]
    [InlineData("ends open ", true)]
    [InlineData("found `Xyz`, expected a name", false)]
    [InlineData("`Xyz` is no name", false)]
    public void A_malformed_sentence_is_found(string sentence, bool isFound) =>
        Assert.Equal(isFound, Malformed().IsMatch(sentence));

    [Theory]
    [InlineData("expected a ChoiceType", true)]
    [InlineData("expected Axis { Name = x }", true)]
    [InlineData("expected UTF-8 or JSON", false)]
    public void A_type_of_the_program_is_found(string sentence, bool isFound) =>
        Assert.Equal(isFound, TypeName().IsMatch(sentence));

    private static string OutsideBackticks(string text) => Regex.Replace(text, "`[^`]*`", "``");

    private static string WithoutBlocks(string page) => Regex.Replace(page, "^```.*?^```$", "", RegexOptions.Multiline | RegexOptions.Singleline);

    [GeneratedRegex(@"^[^a-z`0-9]|[.!]$|\s$|\r|\n|  |\. [A-Z]")]
    private static partial Regex Malformed();

    [GeneratedRegex(
        @"\b(?:tokens?|identifiers?|EOF|literals?|null|AST|nodes?|pars(?:e|es|ed|er|ing)|exceptions?|invalid|diagnostics?|CLR|scalars?|enum|nullable|deseriali[sz]\w*)\b",
        RegexOptions.IgnoreCase)]
    private static partial Regex MakersWord();

    [GeneratedRegex(@"\b[A-Z][a-z]+[A-Z][A-Za-z]+\b|\b(?:Int32|Int64|String|Object|Boolean|IEnumerable|ImmutableArray|Dictionary)\b|`\d+\[|\bSystem\.|\{ \w+ = ")]
    private static partial Regex TypeName();

    [GeneratedRegex(
        @"\b(?:colors?|colored|behaviors?|centers?|centered|fibers?|gray|catalogs?|labeled|labeling|canceled|canceling|modeled|modeling|traveled|favor\w*|honor\w*|neighbors?|rumors?|tumors?|"
        + @"edema|hematoma|anesth\w*|orthopedic\w*|analyz\w*|normaliz\w*|recogniz\w*|organiz\w*|summariz\w*|initializ\w*|serializ\w*|generaliz\w*|minimiz\w*|maximiz\w*|standardiz\w*|visualiz\w*|localiz\w*|judgment|artifacts?|licenses?)\b",
        RegexOptions.IgnoreCase)]
    private static partial Regex AmericanSpelling();
}
