namespace FindingRules.Model.Text;

/// <summary>A place in a text; for a study also its JSON Pointer (RFC 6901).</summary>
public sealed record Location(SourceText Source, TextSpan Span, string? Pointer = null)
{
    public LinePosition Start => Source.PositionOf(Span.Start);

    public string Words => Source.Slice(Span);

    public override string ToString() => $"{Source.Path}:{Start.Line}:{Start.Column}";
}
