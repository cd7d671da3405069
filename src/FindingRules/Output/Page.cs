namespace FindingRules.Output;

/// <summary>Plain text in columns: headings, items with details below them, nothing wider than the page.</summary>
internal sealed class Page(TextWriter to, int width)
{
    private const string ItemIndent = "  ";
    private const string DetailIndent = "      ";

    private bool _isFirst = true;

    public void Heading(string text)
    {
        if (!_isFirst) to.WriteLine();
        _isFirst = false;
        to.WriteLine(text);
    }

    public void Paragraph(string text) => Write(text, "", "");

    /// <param name="details">Those that are null are left out.</param>
    public void Item(string text, params string?[] details)
    {
        Write(text, ItemIndent, ItemIndent + ItemIndent);
        foreach (var detail in details)
            if (!string.IsNullOrEmpty(detail))
                Write(detail, DetailIndent, DetailIndent + ItemIndent);
    }

    private void Write(string text, string firstIndent, string indent)
    {
        var line = firstIndent;
        var isEmpty = true;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!isEmpty && line.Length + 1 + word.Length > width)
            {
                to.WriteLine(line);
                (line, isEmpty) = (indent, true);
            }
            line = isEmpty ? line + word : $"{line} {word}";
            isEmpty = false;
        }
        to.WriteLine(line.TrimEnd());
    }
}
