using FindingRules.Model.Text;

namespace FindingRules.Packs.Documents;

/// <summary>
/// Plain, single-quoted and double-quoted scalars. Source: YAML 1.2.2, sections 7.3 and 6.5 (line folding). A line break
/// is a space, further ones are breaks, and white space beside them is layout.
/// </summary>
internal sealed class FlowScalar
{
    private readonly string _content;
    private readonly MappedTextBuilder _built;
    private readonly char _quote;
    private readonly int _end;
    private int _at;
    private bool _hasEscapedBreak;

    private FlowScalar(SourceText source, TextSpan span, char quote)
    {
        _content = source.Content;
        _built = new MappedTextBuilder(source);
        _quote = quote;
        _at = span.Start + (quote == '\0' ? 0 : 1);
        _end = span.End - (quote == '\0' ? 0 : 1);
    }

    public static MappedText? Read(SourceText source, TextSpan span, char quote)
    {
        if (quote != '\0' && (span.Length < 2 || source.Content[span.Start] != quote)) return null;
        var scalar = new FlowScalar(source, span, quote);
        while (scalar._at < scalar._end)
        {
            scalar.ReadSolid();
            scalar.ReadSpace();
        }
        return scalar._built.Build(scalar._end);
    }

    private void ReadSolid()
    {
        while (_at < _end && !IsSpace(_content[_at]))
        {
            var c = _content[_at];
            if (_quote == '\'' && c == '\'')
            {
                _built.Add('\'', _at);
                _at += 2;
            }
            else if (_quote == '"' && c == '\\')
            {
                if (!ReadEscape()) return;
            }
            else
            {
                _built.Add(c, _at);
                _at++;
            }
        }
    }

    /// <summary>False at an escaped line break: the white space after it is read as layout.</summary>
    private bool ReadEscape()
    {
        if (_at + 1 < _end && _content[_at + 1] is '\n' or '\r')
        {
            _at++;
            SkipBreak();
            _hasEscapedBreak = true;
            return false;
        }
        var length = Escapes.Read(_content.AsSpan(_at, _end - _at), out var text);
        _built.Add(text, _at);
        _at += length;
        return true;
    }

    private void ReadSpace()
    {
        var (blanksFrom, blanksTo) = (_at, _at);
        int? firstBreak = null;
        var moreBreaks = new List<int>();
        for (; _at < _end && IsSpace(_content[_at]);)
        {
            if (_content[_at] is ' ' or '\t')
            {
                _at++;
                if (firstBreak is null) blanksTo = _at;
                continue;
            }
            if (firstBreak is null && !_hasEscapedBreak) firstBreak = _at;
            else moreBreaks.Add(_at);
            SkipBreak();
        }
        if (firstBreak is { } at && moreBreaks.Count == 0) _built.Add(' ', at);
        else if (firstBreak is not null || _hasEscapedBreak) _built.AddBreaks(moreBreaks);
        else _built.AddRun(blanksFrom, blanksTo);
        _hasEscapedBreak = false;
    }

    private void SkipBreak() => _at += _content[_at] == '\r' && _at + 1 < _content.Length && _content[_at + 1] == '\n' ? 2 : 1;

    private static bool IsSpace(char c) => c is ' ' or '\t' or '\n' or '\r';
}
