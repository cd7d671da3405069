using System.Collections.Immutable;
using FindingRules.Model.Text;

namespace FindingRules.Packs.Documents;

/// <summary>Reads a scalar's text again from the raw file, so that every character keeps its place.</summary>
internal static class ScalarMap
{
    public static MappedText Read(ScalarNode scalar)
    {
        var read = scalar.Style switch
        {
            ScalarStyle.Plain => FlowScalar.Read(scalar.Source, scalar.Span, quote: '\0'),
            ScalarStyle.SingleQuoted => FlowScalar.Read(scalar.Source, scalar.Span, quote: '\''),
            ScalarStyle.DoubleQuoted => FlowScalar.Read(scalar.Source, scalar.Span, quote: '"'),
            ScalarStyle.Literal => BlockScalar.Read(scalar, isFolded: false),
            ScalarStyle.Folded => BlockScalar.Read(scalar, isFolded: true),
            _ => null,
        };
        return read?.Text == scalar.Value ? read : Pointing(scalar);
    }

    // A scalar behind a refused tag, or one from JSON: right in its words, and pointing at the whole of it.
    private static MappedText Pointing(ScalarNode scalar)
    {
        var offsets = ImmutableArray.CreateBuilder<int>(scalar.Value.Length + 1);
        for (var i = 0; i < scalar.Value.Length; i++) offsets.Add(scalar.Span.Start);
        offsets.Add(scalar.Span.End);
        return new MappedText(scalar.Source, scalar.Value, offsets.MoveToImmutable());
    }
}
