using System.Collections.Immutable;
using System.Text;
using FindingRules.Model.Text;

namespace FindingRules.Testing;

/// <summary>
/// A text with places marked: <c>MarkedSource.Parse("rule: ⟦thicknes⟧ above 4 mm")</c> gives the text without the marks
/// and the span of what stood between them. Marks may lie inside each other.
/// </summary>
/// <param name="Spans">In order of where they start, the outer before the inner.</param>
public sealed record MarkedSource(string Text, ImmutableArray<TextSpan> Spans)
{
    private const char Open = '⟦';
    private const char Close = '⟧';

    /// <summary>The one place that is marked.</summary>
    public TextSpan Span => Spans.Single();

    public static MarkedSource Parse(string marked)
    {
        var text = new StringBuilder();
        var open = new Stack<int>();
        var spans = new List<TextSpan>();
        foreach (var character in marked)
        {
            if (character == Open) open.Push(text.Length);
            else if (character != Close) text.Append(character);
            else if (open.TryPop(out var start)) spans.Add(TextSpan.Between(start, text.Length));
            else throw new FormatException($"A mark is closed that was not opened, after: {text}");
        }
        if (open.Count > 0) throw new FormatException("A mark is open at the end of the text.");
        return new MarkedSource(text.ToString(), [.. spans.OrderBy(s => s.Start).ThenByDescending(s => s.Length)]);
    }

    /// <summary>The text with marks around the spans: what a failing test shows.</summary>
    public static string Show(string text, IEnumerable<TextSpan> spans)
    {
        var shown = new StringBuilder();
        var all = spans.ToArray();
        for (var i = 0; i <= text.Length; i++)
        {
            shown.Append(Close, all.Count(s => s.End == i && s.Length > 0));
            foreach (var span in all.Where(s => s.Start == i))
                shown.Append(span.Length > 0 ? $"{Open}" : $"{Open}{Close}");
            if (i < text.Length) shown.Append(text[i]);
        }
        return shown.ToString();
    }
}
