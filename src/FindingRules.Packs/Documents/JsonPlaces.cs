using System.Text;
using FindingRules.Model.Text;

namespace FindingRules.Packs.Documents;

/// <summary>
/// From a byte of the UTF-8 text to the character it belongs to. Asked in ascending order it walks the text once; where
/// all is ASCII the two are the same.
/// </summary>
internal struct JsonPlaces(SourceText source)
{
    private readonly bool _isAscii = Ascii.IsValid(source.Utf8);
    private int _byte;
    private int _char;

    public int OffsetOf(int byteOffset)
    {
        if (_isAscii) return byteOffset;
        var content = source.Content;
        if (byteOffset < _byte) (_byte, _char) = (0, 0);
        while (_byte < byteOffset && _char < content.Length)
        {
            var c = content[_char];
            var isPair = char.IsHighSurrogate(c) && _char + 1 < content.Length && char.IsLowSurrogate(content[_char + 1]);
            _byte += isPair ? 4 : c < 0x80 ? 1 : c < 0x800 ? 2 : 3;
            _char += isPair ? 2 : 1;
        }
        return _char;
    }
}
