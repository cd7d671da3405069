namespace FindingRules.Model.Text;

/// <summary>A place in a text; for a study also its JSON Pointer (RFC 6901).</summary>
public sealed record Location(SourceText Source, TextSpan Span, string? Pointer = null)
{
    private readonly PointedPlace? _place;

    /// <summary>A place in a study, whose pointer is made when a message asks for it.</summary>
    public Location(SourceText source, TextSpan span, PointedPlace place)
        : this(source, span) => _place = place;

    public string? Pointer
    {
        get => field ?? _place?.Pointer;
        init;
    } = Pointer;

    public LinePosition Start => Source.PositionOf(Span.Start);

    public string Words => Source.Slice(Span);

    public bool Equals(Location? other) =>
        other is not null && Source == other.Source && Span == other.Span && Pointer == other.Pointer;

    public override int GetHashCode() => HashCode.Combine(Source, Span);

    public override string ToString() => $"{Source.Path}:{Start.Line}:{Start.Column}";
}

/// <summary>What knows its JSON Pointer.</summary>
public abstract class PointedPlace
{
    public abstract string Pointer { get; }
}
