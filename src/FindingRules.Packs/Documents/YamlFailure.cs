using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;
using YamlDotNet.Core;

namespace FindingRules.Packs.Documents;

/// <summary>Puts whatever the YAML parser gave up with into an author's words.</summary>
internal static class YamlFailure
{
    private static readonly (string Heard, string Found, string Label)[] Words =
    [
        ("mapping values are not allowed", "a second `: ` stands on this line",
            "put text that holds a colon and a space in double quotes"),
        ("multiline plain scalar", "a key stands where the text of the line above goes on",
            "check the indent, and put text that holds a colon and a space in double quotes"),
        ("found invalid mapping", "a second `: ` stands on this line",
            "put text that holds a colon and a space in double quotes"),
        ("document indicator", "a quotation is still open where the file ends", "close it"),
        ("quoted scalar, found unexpected end of stream", "a quotation is still open where the file ends", "close it"),
        ("wrong indentation", "a quotation goes on at too small an indent", "indent it deeper than its key"),
        ("unknown escape", "a backslash stands before a character that has no such form",
            "write two backslashes for one, or use single quotes"),
        ("hexadecimal", "the digits after `\\x`, `\\u` or `\\U` are not all there", "write 2, 4 or 8 hexadecimal digits"),
        ("unicode", "the digits after `\\u` or `\\U` name no character", "write a character that there is"),
        ("cannot start any", "a text begins with a character that it cannot begin with", "put it in double quotes"),
        ("',' or ']'", "a list in brackets is not closed, or lacks a comma", "check the commas and the closing `]`"),
        ("',' or '}'", "a group in braces is not closed, or lacks a comma", "check the commas and the closing `}`"),
        ("expected '-'", "this line stands in a list and does not begin with `- `", "check the indent"),
        ("sequence entries are not allowed", "`- ` begins a list where there can be none", "begin the list on a line of its own"),
        ("could not find expected ':'", "a line has no `: ` after its key", "write `key: value`"),
        ("did not find expected key", "this line fits neither the line above nor the group around it",
            "check the indent, and that each line is `key: value`"),
        ("'...'", "something stands after `...` on its line", "give `...` a line of its own"),
        ("block scalar", "this text after `|` or `>` is not laid out as one",
            "begin it on the next line, indented deeper than its key"),
        ("%", "a line begins with `%`, an instruction to the YAML reader", "take the line out, or put the text in double quotes"),
        ("directive", "a line begins with `%`, an instruction to the YAML reader",
            "take the line out, or put the text in double quotes"),
        ("anchor", "an `&` or `*` begins this text", "put it in double quotes"),
        ("alias", "an `&` or `*` begins this text", "put it in double quotes"),
        ("tag", "an `!` begins this text", "put it in double quotes"),
        ("comment", "`#` stands right after other signs", "put a space before it"),
    ];

    public static Message Explain(Exception failure, SourceText source, int lastEnd)
    {
        var at = failure is YamlException { Start.Index: > 0 } yaml ? (int)yaml.Start.Index : lastEnd;
        var heard = failure.Message;
        foreach (var (fragment, found, label) in Words)
            if (heard.Contains(fragment, StringComparison.OrdinalIgnoreCase))
                return YamlMessages.NotYaml(Near(source, at), found, label);
        return YamlMessages.NotYaml(
            Near(source, at), "from here on the file does not fit together",
            "check brackets, quotes and the indent here and just above");
    }

    // The end of the file underlines nothing: the last character that was read serves.
    private static Location Near(SourceText source, int at)
    {
        var start = Math.Clamp(at, 0, source.Content.Length);
        return new Location(source, new TextSpan(start, Math.Min(1, source.Content.Length - start)));
    }
}
