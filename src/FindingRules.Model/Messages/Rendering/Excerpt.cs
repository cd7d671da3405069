using System.Text;
using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Rendering;

/// <summary>The line that a location starts in, cut to what fits, and the carets under the words that are meant.</summary>
/// <param name="Line">The line as shown.</param>
/// <param name="Pad">Columns before the first caret.</param>
/// <param name="Carets">How many columns are underlined.</param>
/// <param name="LastLine">The line where the location ends, where that is another one.</param>
internal sealed record Excerpt(string Line, int Pad, int Carets, int? LastLine)
{
    private const char Cut = '…';

    // Enough on both sides for any width: a study on one line may have a million characters.
    private const int Reach = 400;

    /// <summary>Null where the text is empty and there is nothing to show.</summary>
    public static Excerpt? Of(Location location, int width)
    {
        if (location.Source.Content.Length == 0) return null;
        var start = location.Start;
        var end = location.Source.PositionOf(location.Span.End);
        var line = location.Source.LineAt(start.Line);
        var from = Math.Min(start.Column - 1, line.Length);
        var isOneLine = end.Line == start.Line;
        var to = isOneLine ? Math.Clamp(end.Column - 1, from, line.Length) : Math.Max(from, line.TrimEnd().Length);
        var (piece, offset) = Piece(line, from);
        return Of(TextElement.Split(piece), from - offset, to - offset, width, offset > 0, offset + piece.Length < line.Length)
            with
        { LastLine = isOneLine ? null : end.Line };
    }

    private static (string, int) Piece(string line, int from)
    {
        var low = Math.Max(0, from - Reach);
        var high = Math.Min(line.Length, from + (2 * Reach));
        if (low > 0 && char.IsLowSurrogate(line[low])) low--;
        if (high < line.Length && char.IsLowSurrogate(line[high])) high++;
        return (line[low..high], low);
    }

    private static Excerpt Of(List<TextElement> elements, int from, int to, int width, bool isCutBefore, bool isCutAfter)
    {
        var first = isCutBefore ? 0 : elements.FindIndex(e => e.Start >= from || e.Shown.Trim().Length > 0);
        if (first < 0) first = 0;
        var marked = elements.FindIndex(e => e.Start + e.Length > from);
        if (marked < 0) marked = elements.Count;
        first = FirstThatFits(elements, first, marked, width);
        var last = LastThatFits(elements, first, width);

        var line = new StringBuilder();
        if (first > 0 && (isCutBefore || HasInk(elements, first))) line.Append(Cut);
        var (pad, carets) = (line.Length, 0);
        for (var i = first; i < last; i++)
        {
            line.Append(elements[i].Shown);
            if (i < marked) pad += elements[i].Width;
            else if (elements[i].Start < to) carets += elements[i].Width;
        }
        if (isCutAfter || last < elements.Count) line.Append(Cut);
        return new Excerpt(line.ToString().TrimEnd(), pad, Math.Max(1, carets), null);
    }

    private static bool HasInk(List<TextElement> elements, int before) =>
        elements.Take(before).Any(e => e.Shown.Trim().Length > 0);

    /// <summary>Leaves a third of the width for what comes before the words, so that they are read in their company.</summary>
    private static int FirstThatFits(List<TextElement> elements, int first, int marked, int width)
    {
        if (elements.Skip(first).Sum(e => e.Width) <= width) return first;
        var room = width / 3;
        var at = marked;
        while (at > first && room >= elements[at - 1].Width)
        {
            at--;
            room -= elements[at].Width;
        }
        return at;
    }

    private static int LastThatFits(List<TextElement> elements, int first, int width)
    {
        var room = width - 2; // for a cut on either side
        var at = first;
        while (at < elements.Count && room >= elements[at].Width)
        {
            room -= elements[at].Width;
            at++;
        }
        return at;
    }
}
