using System.Text.Json;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;

namespace FindingRules.Packs.Documents;

/// <summary>Puts whatever is not JSON into a sender's words, judged by what stands at the place.</summary>
internal static class JsonFailure
{
    public static Message Explain(JsonException failure, SourceText source, ReadOnlySpan<byte> bytes)
    {
        var places = new JsonPlaces(source);
        var at = Math.Min(places.OffsetOf(ByteOffset(failure, bytes)), source.Content.Length);
        var content = source.Content;
        if (content.AsSpan().Trim().IsEmpty)
            return StudyMessages.NotJson(source.Whole, "nothing was sent", "send a study as one JSON object");
        if (at >= content.Length || content.AsSpan(at).Trim().IsEmpty)
            return StudyMessages.NotJson(At(source, at), "the study stops before it is complete",
                "check that nothing was cut off, and close what is open");
        if (content[at] is ']' or '}' && LastSolid(content, at) == ',')
            return StudyMessages.NotJson(At(source, at), "a comma stands before the closing bracket", "take the comma out");
        if (content[at] == '/' || (content[at] == '*' && at > 0 && content[at - 1] == '/'))
            return StudyMessages.NotJson(At(source, at), "a comment stands here; JSON has none", "take the comment out");
        return StudyMessages.NotJson(At(source, at), Found(content, at), Advice(content[at]));
    }

    public static Message HalfCharacter(Location at) =>
        StudyMessages.NotJson(at, "a `\\u` escape here is half of a character", "write the character itself");

    private static string Found(string content, int at)
    {
        var c = content[at];
        if (c is < ' ' or '\u007f') return $"the control character U+{(int)c:X4} stands inside a text, or where none may";
        return $"`{Shown.Briefly(c.ToString())}` does not belong here";
    }

    private static string Advice(char c) => c switch
    {
        '\'' => "write texts and names in double quotes",
        '0' or '+' or '.' => "write a number as 0.5 or 12, without leading zeros or a plus",
        'N' or 'I' or '-' => "a number has digits only",
        '"' or '{' or '[' => "a comma or a colon may be missing before it",
        '\\' => "after a backslash only \" \\ / b f n r t and u with four digits have a meaning",
        _ => "check the commas, colons, quotes and brackets just before it",
    };

    private static char LastSolid(string content, int at)
    {
        for (var i = at - 1; i >= 0; i--)
            if (!char.IsWhiteSpace(content[i]))
                return content[i];
        return '\0';
    }

    private static int ByteOffset(JsonException failure, ReadOnlySpan<byte> bytes)
    {
        var start = 0;
        for (var line = failure.LineNumber ?? 0; line > 0; line--)
        {
            var next = bytes[start..].IndexOf((byte)'\n');
            if (next < 0) break;
            start += next + 1;
        }
        return Math.Min(bytes.Length, start + (int)(failure.BytePositionInLine ?? 0));
    }

    private static Location At(SourceText source, int offset) =>
        new(source, new TextSpan(offset, Math.Min(1, source.Content.Length - offset)), "");
}
