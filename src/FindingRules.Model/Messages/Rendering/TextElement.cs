using System.Globalization;
using System.Text;

namespace FindingRules.Model.Messages.Rendering;

/// <summary>What a reader sees as one character: how it is shown, and how many columns of a terminal it takes.</summary>
/// <param name="Start">Offset in the line, in UTF-16 code units.</param>
internal readonly record struct TextElement(int Start, int Length, string Shown, int Width)
{
    private const string Tab = "    ";

    public static List<TextElement> Split(string line)
    {
        var elements = new List<TextElement>(line.Length);
        for (var at = 0; at < line.Length;)
        {
            var length = StringInfo.GetNextTextElementLength(line, at);
            elements.Add(Show(line, at, length));
            at += length;
        }
        return elements;
    }

    private static TextElement Show(string line, int at, int length)
    {
        var element = line.Substring(at, length);
        if (element == "\t") return new TextElement(at, length, Tab, Tab.Length);
        if (length == 1 && element[0] is >= ' ' and <= '~') return new TextElement(at, length, element, 1);
        var shown = Printable.Of(element);
        Rune.DecodeFromUtf16(shown, out var rune, out _);
        return new TextElement(at, length, shown, IsWide(rune.Value) ? 2 : 1);
    }

    // The ranges of East Asian Width "W" and "F" (Unicode Standard Annex 11) that terminals draw in two columns.
    private static bool IsWide(int rune) => rune
        is (>= 0x1100 and <= 0x115F)
        or (>= 0x2E80 and <= 0x303E)
        or (>= 0x3041 and <= 0xA4CF)
        or (>= 0xAC00 and <= 0xD7A3)
        or (>= 0xF900 and <= 0xFAFF)
        or (>= 0xFE30 and <= 0xFE6F)
        or (>= 0xFF00 and <= 0xFF60)
        or (>= 0xFFE0 and <= 0xFFE6)
        or (>= 0x1F300 and <= 0x1F64F)
        or (>= 0x1F680 and <= 0x1F6FF)
        or (>= 0x1F900 and <= 0x1F9FF)
        or (>= 0x20000 and <= 0x3FFFD);
}
