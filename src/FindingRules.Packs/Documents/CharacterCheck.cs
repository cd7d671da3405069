using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;

namespace FindingRules.Packs.Documents;

/// <summary>Finds the characters that a pack file may not hold, in the file as it is and in what its escapes stand for.</summary>
internal static class CharacterCheck
{
    private enum Trouble
    {
        None,
        Control,
        Invisible,
        Tab,
    }

    /// <summary>
    /// One message for each sort of trouble. Returns the text with a space in each such place, so that everything else
    /// in the file is still read and checked.
    /// </summary>
    public static string Report(SourceText source, MessageBag messages)
    {
        var content = source.Content;
        if (IndexOfTrouble(content, 0) < 0) return content;
        var clean = content.ToCharArray();
        Span<int> counts = stackalloc int[4];
        Span<int> firsts = stackalloc int[4];
        for (var i = IndexOfTrouble(content, 0); i >= 0; i = IndexOfTrouble(content, i + 1))
        {
            var trouble = TroubleOf(content[i]);
            if (counts[(int)trouble]++ == 0) firsts[(int)trouble] = i;
            clean[i] = ' ';
        }
        for (var trouble = Trouble.Control; trouble <= Trouble.Tab; trouble++)
        {
            var (count, first) = (counts[(int)trouble], firsts[(int)trouble]);
            if (count > 0) messages.Add(Message(trouble, At(source, first), content[first], count - 1));
        }
        return new string(clean);
    }

    /// <summary>Looks at a double-quoted scalar, whose escapes may stand for what the file itself may not hold.</summary>
    public static void ReportEscaped(ScalarNode scalar, MessageBag messages)
    {
        var at = IndexOfTrouble(scalar.Value, 0);
        if (at < 0) return;
        var start = scalar.Text.At(new TextSpan(at, 1)).Span.Start;
        var written = Escapes.Read(scalar.Source.Content.AsSpan(start, scalar.Span.End - start), out _);
        var place = new Location(scalar.Source, new TextSpan(start, written));
        messages.Add(Message(TroubleOf(scalar.Value[at]), place, scalar.Value[at], 0));
    }

    private static Message Message(Trouble trouble, Location at, char c, int more) => trouble switch
    {
        Trouble.Tab => YamlMessages.Tab(at, more),
        Trouble.Invisible => YamlMessages.InvisibleCharacter(at, c, more),
        _ => YamlMessages.ControlCharacter(at, c, more),
    };

    private static Location At(SourceText source, int offset) => new(source, new TextSpan(offset, 1));

    private static int IndexOfTrouble(string text, int from)
    {
        for (var i = from; i < text.Length; i++)
        {
            var c = text[i];
            if (c is >= ' ' and < '\u007f' or '\n' or '\r') continue;
            if (char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                // The last two of every plane are no characters.
                if ((char.ConvertToUtf32(c, text[i + 1]) & 0xFFFE) == 0xFFFE) return i;
                i++;
            }
            else if (TroubleOf(c) != Trouble.None)
            {
                return i;
            }
        }
        return -1;
    }

    private static Trouble TroubleOf(char c) => c switch
    {
        '\t' => Trouble.Tab,
        '\n' or '\r' => Trouble.None,
        < ' ' or >= '\u007f' and <= '\u009f' => Trouble.Control,
        // Half of a character that takes two, and what is no character at all.
        >= '\ud800' and <= '\udfff' or >= '\ufdd0' and <= '\ufdef' or '\ufffe' or '\uffff' => Trouble.Control,
        // Bidirectional controls, and characters that take no room or end a line unseen.
        '\u061c' or '\u200e' or '\u200f' or >= '\u202a' and <= '\u202e' or >= '\u2066' and <= '\u2069' => Trouble.Invisible,
        '\u00ad' or '\u200b' or '\u2028' or '\u2029' or '\u2060' or '\ufeff' => Trouble.Invisible,
        _ => Trouble.None,
    };
}
