using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR10xx: what a pack file may not hold, whatever it is about.</summary>
public static class YamlMessages
{
    /// <summary>FR1001: <paramref name="found"/> says in plain words what does not fit.</summary>
    public static Message NotYaml(Location at, string found, string label) => Error(1001, at, found, label);

    public static Message AnchorOrAlias(Location at, string mark) =>
        Error(1002, at, $"found `{mark}`, which names or repeats a piece of YAML; a pack says everything where it is meant",
            "write the values out, or put text that begins with `&` or `*` in double quotes");

    public static Message Tag(Location at, string tag) =>
        Error(1003, at, $"found the YAML tag `{tag}`; a pack uses plain values only",
            "take the tag out, or put text that begins with `!` in double quotes");

    public static Message DuplicateKey(Location at, string key, Location first) =>
        Error(1004, at, $"`{key}` is here a second time; a key stands once in its group", "take one of the two out") with
        {
            Related = [new(first, "first here")],
        };

    public static Message SecondDocument(Location at) =>
        Error(1005, at, "a second document starts here; a pack file holds one",
            "move it to a file of its own, or take out the line `...` or `---` before it");

    public static Message NoDocumentEnd(Location at) =>
        Error(1006, at, "the file ends without the line `...`; it may have been cut short",
            "check that nothing is missing, then add `...` as the last line");

    public static Message ControlCharacter(Location at, int codePoint, int more) =>
        Error(1007, at, $"found the control character U+{codePoint:X4}{AndMore(more)}; a pack holds plain text", "take it out");

    public static Message InvisibleCharacter(Location at, int codePoint, int more) =>
        Error(1008, at, $"found U+{codePoint:X4}{AndMore(more)}, which hides or turns round the text beside it",
            "take it out: what a reviewer sees must be what is there");

    public static Message Tab(Location at, int more) =>
        Error(1009, at, $"found a tab{AndMore(more)}; a pack is indented with spaces", "replace it by spaces");

    public static Message TooDeep(Location at, int most) =>
        Error(1010, at, $"lists and groups lie more than {most} deep here; no pack file needs that", "take the inner ones out");

    public static Message EmptyFile(Location at) =>
        Error(1011, at, "the file says nothing; expected keys with values", "write it, or take it out of the manifest");

    public static Message KeyNotText(Location at) =>
        Error(1012, at, "found a list or a group where a key stands; a key is a word", "write a word and a colon");

    public static Message Directive(Location at) =>
        Error(1013, at, "found a line that begins with `%`, an instruction to the YAML reader; a pack has none", "take the line out");

    public static Message QuestionMark(Location at) =>
        Error(1014, at, "found `?` before a key; a pack writes every key as `key: value`",
            "take the `?` out, and write key and value on one line");

    private static string AndMore(int more) => more == 0 ? "" : $" (and {more} more in this file)";

    private static Message Error(int number, Location at, string text, string label) =>
        new(number, Severity.Error, at, text) { Label = label };
}
