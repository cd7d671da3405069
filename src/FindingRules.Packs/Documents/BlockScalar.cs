using FindingRules.Model.Text;

namespace FindingRules.Packs.Documents;

/// <summary>
/// Literal and folded scalars. Source: YAML 1.2.2, section 8.1. In a folded one a single break between two lines that do
/// not begin with white space is a space.
/// </summary>
internal sealed class BlockScalar
{
    private readonly string _content;
    private readonly MappedTextBuilder _built;
    private readonly bool _isFolded;
    private readonly int _end;
    private readonly List<int> _emptyLines = [];
    private int _at;
    private int? _lastBreak;
    private bool _wasIndentedMore;

    private BlockScalar(ScalarNode scalar, bool isFolded)
    {
        _content = scalar.Source.Content;
        _built = new MappedTextBuilder(scalar.Source);
        _isFolded = isFolded;
        _at = scalar.Span.Start;
        _end = scalar.Span.End;
    }

    public static MappedText? Read(ScalarNode scalar, bool isFolded)
    {
        var block = new BlockScalar(scalar, isFolded);
        return block.ReadAll(scalar.Value);
    }

    private MappedText? ReadAll(string value)
    {
        if (_at >= _end || _content[_at] is not ('|' or '>')) return null;
        var headerEnd = LineEnd(_at);
        var chomping = ChompingOf(_content.AsSpan(_at, headerEnd - _at));
        _at = AfterBreak(headerEnd);
        var indent = IndentOf(value);
        while (_at < _end) ReadLine(indent);
        if (chomping != '-' && _lastBreak is { } last) _built.Add('\n', last);
        if (chomping == '+') _built.AddBreaks(_emptyLines);
        return _built.Build(_end);
    }

    private void ReadLine(int indent)
    {
        var end = LineEnd(_at);
        var start = Math.Min(_at + indent, end);
        if (IsBlank(_at, end) && start >= end)
        {
            if (end < _end) _emptyLines.Add(end);
        }
        else
        {
            Join(_content[start] is ' ' or '\t');
            _built.AddRun(start, end);
            _lastBreak = end < _end ? end : null;
        }
        _at = AfterBreak(end);
    }

    private void Join(bool isIndentedMore)
    {
        if (_lastBreak is { } last)
        {
            var folds = _isFolded && !_wasIndentedMore && !isIndentedMore;
            if (!folds) _built.Add('\n', last);
            else if (_emptyLines.Count == 0) _built.Add(' ', last);
        }
        _built.AddBreaks(_emptyLines);
        _emptyLines.Clear();
        _wasIndentedMore = isIndentedMore;
    }

    // The file's first line of words begins with the indent and then with what the value begins with.
    private int IndentOf(string value)
    {
        for (var at = _at; at < _end; at = AfterBreak(LineEnd(at)))
        {
            var end = LineEnd(at);
            if (!IsBlank(at, end)) return Math.Max(0, LeadingBlanks(_content, at) - LeadingBlanks(value, FirstWordLine(value)));
        }
        return int.MaxValue / 2;
    }

    private static int FirstWordLine(string value)
    {
        var start = 0;
        for (var i = 0; i < value.Length && value[i] is ' ' or '\n'; i++)
            if (value[i] == '\n')
                start = i + 1;
        return start;
    }

    private static int LeadingBlanks(string text, int from)
    {
        var at = from;
        while (at < text.Length && text[at] == ' ') at++;
        return at - from;
    }

    private static char ChompingOf(ReadOnlySpan<char> header)
    {
        var comment = header.IndexOf('#');
        var marks = comment < 0 ? header : header[..comment];
        return marks.Contains('-') ? '-' : marks.Contains('+') ? '+' : ' ';
    }

    private bool IsBlank(int start, int end) => _content.AsSpan(start, end - start).Trim(' ').IsEmpty;

    private int LineEnd(int from)
    {
        var at = from;
        while (at < _end && _content[at] is not ('\n' or '\r')) at++;
        return at;
    }

    private int AfterBreak(int at)
    {
        if (at >= _end) return _end;
        return _content[at] == '\r' && at + 1 < _end && _content[at + 1] == '\n' ? at + 2 : at + 1;
    }
}
