using FindingRules.Model.Text;

namespace FindingRules.Packs.Documents;

/// <summary>A piece of a YAML file or a JSON text, as written, with its place.</summary>
internal abstract class DocumentNode(SourceText source, TextSpan span) : PointedPlace
{
    private string? _pointer;

    public SourceText Source { get; } = source;

    public TextSpan Span { get; } = span;

    /// <summary>What it lies in; null for the whole document.</summary>
    public DocumentNode? Parent { get; private set; }

    /// <summary>Its key or its number in what it lies in; null for the whole document.</summary>
    public string? Step { get; private set; }

    /// <summary>As messages name its form: a list, a text.</summary>
    public abstract string Form { get; }

    /// <summary>A study's places carry a JSON Pointer, a pack file's do not.</summary>
    public bool HasPointers { get; init; }

    public Location Location => At(Span);

    /// <summary>The place where it begins: enough to underline for what is missing inside.</summary>
    public Location Opening => At(Span with { Length = Math.Min(1, Span.Length) });

    /// <summary>RFC 6901.</summary>
    public override string Pointer => _pointer ??= Parent is null ? "" : $"{Parent.Pointer}/{Escape(Step!)}";

    protected Location At(TextSpan span) => HasPointers ? new Location(Source, span, this) : new Location(Source, span);

    internal void AttachTo(DocumentNode parent, string step)
    {
        Parent = parent;
        Step = step;
    }

    private static string Escape(string step) =>
        step.AsSpan().ContainsAny('~', '/') ? step.Replace("~", "~0").Replace("/", "~1") : step;
}
