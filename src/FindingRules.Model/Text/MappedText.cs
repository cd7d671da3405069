using System.Collections.Immutable;

namespace FindingRules.Model.Text;

/// <summary>
/// A value taken out of a file (a YAML scalar of any style, folded and unescaped) that remembers, character by
/// character, where in the file it stood. A rule is read from this text and reported at the place it points to.
/// </summary>
public sealed class MappedText
{
    private readonly ImmutableArray<int> _offsets;

    /// <param name="source">The file.</param>
    /// <param name="text">The value.</param>
    /// <param name="offsets">For each character of the value its offset in the file, and one more for the end.</param>
    public MappedText(SourceText source, string text, ImmutableArray<int> offsets)
    {
        if (offsets.Length != text.Length + 1)
            throw new ArgumentException("There must be one offset for each character and one for the end.", nameof(offsets));
        Source = source;
        Text = text;
        _offsets = offsets;
    }

    public SourceText Source { get; }

    public string Text { get; }

    public Location Whole => At(new TextSpan(0, Text.Length));

    /// <summary>A text that is a file of its own, each character at its own place.</summary>
    public static MappedText Verbatim(SourceText source) => Slice(source, new TextSpan(0, source.Content.Length));

    /// <summary>A piece of a file taken as it stands.</summary>
    public static MappedText Slice(SourceText source, TextSpan span) =>
        new(source, source.Slice(span), [.. Enumerable.Range(span.Start, span.Length + 1)]);

    public Location At(TextSpan span)
    {
        var start = Math.Clamp(span.Start, 0, Text.Length);
        var end = Math.Clamp(span.End, start, Text.Length);
        // The end is where the last character ends, not where the next begins: between them may lie a line's indent.
        var fileEnd = end == start ? _offsets[start] : _offsets[end - 1] + 1;
        return new Location(Source, TextSpan.Between(_offsets[start], fileEnd));
    }
}
