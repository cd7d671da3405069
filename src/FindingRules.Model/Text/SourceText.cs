using System.Text;

namespace FindingRules.Model.Text;

/// <summary>Line and column, both counted from 1; the column counts UTF-16 code units.</summary>
public readonly record struct LinePosition(int Line, int Column);

/// <summary>One text as it was read: a file of a pack, a study, or what came over the wire.</summary>
public sealed class SourceText
{
    private string? _content;
    private byte[]? _utf8;
    private int[]? _lineStarts;

    /// <param name="path">The name that messages show: a path relative to the pack, or a word such as <c>request</c>.</param>
    /// <param name="content">The text without a byte-order mark.</param>
    /// <param name="firstLine">Its first line in the file, where the text is one line of a file with one study a line.</param>
    public SourceText(string path, string content, int firstLine = 1)
        : this(path, firstLine) => _content = content;

    private SourceText(string path, int firstLine) => (Path, FirstLine) = (path, firstLine);

    public string Path { get; }

    public string Content => _content ??= Encoding.UTF8.GetString(_utf8!);

    /// <summary>Nobody may change them.</summary>
    public byte[] Utf8 => _utf8 ??= Encoding.UTF8.GetBytes(_content!);

    /// <summary>The number of its first line: 1, save for a text that is a piece of a file.</summary>
    public int FirstLine { get; }

    public int LineCount => LineStarts.Length;

    // Most studies never have a place shown.
    private int[] LineStarts => _lineStarts ??= FindLineStarts(Content);

    /// <summary>Bytes known to be UTF-8, without a byte-order mark; the characters are made when a message asks for them.</summary>
    public static SourceText FromUtf8(string path, ReadOnlySpan<byte> utf8, int firstLine = 1) =>
        new(path, firstLine) { _utf8 = utf8.ToArray() };

    public Location Whole => new(this, new TextSpan(0, Content.Length));

    public LinePosition PositionOf(int offset)
    {
        var at = Math.Clamp(offset, 0, Content.Length);
        var line = Array.BinarySearch(LineStarts, at);
        if (line < 0) line = ~line - 1;
        return new LinePosition(line + FirstLine, at - LineStarts[line] + 1);
    }

    /// <summary>The text of one line, counted as <see cref="PositionOf"/> counts, without its line end.</summary>
    public string LineAt(int line)
    {
        var index = line - FirstLine;
        var start = LineStarts[index];
        var end = index + 1 < LineStarts.Length ? LineStarts[index + 1] : Content.Length;
        return Content[start..end].TrimEnd('\r', '\n');
    }

    public string Slice(TextSpan span) => Content.Substring(span.Start, span.Length);

    private static int[] FindLineStarts(string content)
    {
        var starts = new List<int> { 0 };
        for (var i = 0; i < content.Length; i++)
            if (content[i] == '\n' || (content[i] == '\r' && (i + 1 == content.Length || content[i + 1] != '\n')))
                starts.Add(i + 1);
        return [.. starts];
    }
}
