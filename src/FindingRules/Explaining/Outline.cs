namespace FindingRules.Explaining;

/// <summary>Plain text in steps to the right, nothing wider than the page; a line that is too long goes on below itself.</summary>
internal sealed class Outline(TextWriter to, int width)
{
    private const int Step = 4;

    private bool _isEmpty = true;

    public void Heading(string text)
    {
        if (!_isEmpty) to.WriteLine();
        Line(0, text);
    }

    public void Line(int depth, string text)
    {
        _isEmpty = false;
        var line = new string(' ', depth * Step);
        var isStart = true;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!isStart && line.Length + 1 + word.Length > width)
            {
                to.WriteLine(line);
                (line, isStart) = (new string(' ', (depth * Step) + 2), true);
            }
            line = isStart ? line + word : $"{line} {word}";
            isStart = false;
        }
        to.WriteLine(line.TrimEnd());
    }
}
