using CsCheck;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Packs.Documents;
using Xunit;

namespace FindingRules.Tests.Packs.Documents;

public class ScalarMapTests
{
    private static readonly Gen<string> Words =
        Gen.OneOf("fluid", "→", "spans", "a-b", "4 mm", "é", "😀", "(x", "y)", "of: it's", "\"so\"", "back\\slash", "#5")
            .Array[1, 4].Select(w => string.Join(' ', w));

    private static readonly Gen<string[]> Lines =
        Gen.Select(Words, Gen.Int[0, 2], Gen.OneOf("", "", "  ")).Select((words, empty, indent) =>
                Enumerable.Repeat("", empty).Append(indent + words).ToArray())
            .Array[1, 4].Select(parts => parts.SelectMany(p => p).ToArray());

    [Theory]
    [InlineData("|", "\n")]
    [InlineData("|-", "\r\n")]
    [InlineData("|+", "\n")]
    [InlineData(">", "\n")]
    [InlineData(">", "\r\n")]
    [InlineData(">-", "\n")]
    [InlineData(">+", "\r\n")]
    [InlineData("|2", "\n")]
    [InlineData("| # a comment - with + signs", "\r\n")]
    public void Every_character_of_a_block_scalar_maps_back(string header, string lineEnd) =>
        Gen.Select(Lines, Gen.OneOf(2, 3, 7)).Sample((lines, indent) =>
        {
            var isFixed = header.Contains('2');
            var body = lines.Select(l => l.Length == 0 ? "" : new string(' ', isFixed ? 2 : indent) + l).ToArray();
            if (!isFixed) body[Array.FindIndex(body, l => l.Length > 0)] = new string(' ', indent) + "first";
            AssertMapsBack($"a: {header}{lineEnd}{string.Join(lineEnd, body)}{lineEnd}b: 1{lineEnd}...{lineEnd}");
        }, iter: 300);

    [Theory]
    [InlineData('\'', "\n")]
    [InlineData('\'', "\r\n")]
    [InlineData('"', "\n")]
    [InlineData('"', "\r\n")]
    [InlineData('\0', "\n")]
    [InlineData('\0', "\r\n")]
    public void Every_character_of_a_scalar_within_lines_maps_back(char quote, string lineEnd) =>
        Gen.Select(Lines, Gen.OneOf(" ", "    "), Gen.OneOf("", "  "), Gen.Bool).Sample((lines, indent, trailing, escapesBreak) =>
        {
            var body = lines.Where((l, i) => i > 0 || l.Length > 0).Select(l => Quote(l, quote)).Append(Quote("end", quote)).ToArray();
            for (var i = 0; i < body.Length - 1; i++)
                if (quote == '"' && escapesBreak && body[i].Length > 0) body[i] += '\\';
                else body[i] += trailing;
            var text = string.Join(lineEnd + indent, body);
            var mark = quote == '\0' ? "" : quote.ToString();
            AssertMapsBack($"a: {mark}{text}{mark}{lineEnd}b: 1{lineEnd}...{lineEnd}");
        }, iter: 500);

    [Theory]
    [InlineData("""a: "x \u00e9 \U0001F600 \x41\/\"" """, 4, "\\u00e9", 2)]
    [InlineData("""a: "x \u00e9 \U0001F600 \x41\/\"" """, 4, "\\U0001F600", 4)]
    [InlineData("""a: "x \u00e9 \U0001F600 \x41\/\"" """, 4, "\\x41", 7)]
    [InlineData("""a: 'it''s'""", 4, "''s", 2)]
    public void An_escape_points_at_where_it_is_written(string yaml, int quoteLength, string written, int character)
    {
        var scalar = ReadScalar(yaml + "\n...\n", "a");
        Assert.Equal(yaml.IndexOf(written, StringComparison.Ordinal), scalar.Text.At(new TextSpan(character, 1)).Span.Start);
        Assert.Equal(quoteLength, scalar.Text.At(new TextSpan(0, 1)).Span.Start);
    }

    [Fact]
    public void A_scalar_behind_a_refused_tag_keeps_its_words()
    {
        var scalar = ReadScalar("a: !odd |\n  one\n  two\n...\n", "a");
        Assert.Equal("one\ntwo\n", scalar.Text.Text);
    }

    private static string Quote(string line, char quote) => quote switch
    {
        '\'' => line.Replace("'", "''"),
        '"' => line.Replace("\\", "\\\\").Replace("\"", "\\\"").Replace("é", "\\u00e9"),
        _ => line.Trim().Replace(": ", ":").Replace("#", "").Replace("\"", ""),
    };

    private static ScalarNode ReadScalar(string yaml, string key)
    {
        var root = (MappingNode)YamlReader.Read(new SourceText("a.yaml", yaml), LoadLimits.Default, new MessageBag())!;
        return (ScalarNode)root.Find(key)!;
    }

    private static void AssertMapsBack(string yaml)
    {
        var messages = new MessageBag();
        var root = YamlReader.Read(new SourceText("a.yaml", yaml), LoadLimits.Default, messages);
        Assert.True(root is MappingNode, string.Join('\n', messages.Sorted().Select(m => m.Text)) + "\n" + yaml);
        var scalar = (ScalarNode)((MappingNode)root).Find("a")!;
        var text = scalar.Text;
        Assert.Equal(scalar.Value, text.Text);
        var last = -1;
        for (var i = 0; i < text.Text.Length; i++)
        {
            var at = text.At(new TextSpan(i, 1)).Span.Start;
            Assert.True(at > last || char.IsLowSurrogate(text.Text[i]), $"{i} of «{text.Text}» in «{yaml}»");
            Assert.True(Stands(yaml, at, text.Text[i]), $"{i} of «{text.Text}» maps to {at} in «{yaml}»");
            last = at;
        }
    }

    private static bool Stands(string yaml, int at, char c) => c switch
    {
        '\n' or ' ' when yaml[at] is '\n' or '\r' => true,
        'é' => yaml[at] is 'é' || yaml.AsSpan(at).StartsWith("\\u00e9"),
        '"' or '\\' => yaml[at] == c || yaml[at] == '\\',
        _ => yaml[at] == c,
    };
}
