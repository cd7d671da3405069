using System.Collections.Immutable;
using FindingRules.Model.Text;

namespace FindingRules.Language.Syntax;

/// <summary>
/// Terms side by side. Whether an <c>or</c> joins conditions or the values of one finding is not decided yet, so there
/// is no precedence here either.
/// </summary>
/// <param name="Connectors">One fewer than terms.</param>
internal sealed record ChainSyntax(ImmutableArray<TermSyntax> Terms, ImmutableArray<ConnectorSyntax> Connectors)
{
    public TextSpan Span => Terms[0].Span.Through(Terms[^1].Span);
}

internal sealed record ConnectorSyntax(bool IsAnd, TextSpan Span);

internal sealed record TermSyntax(WordSyntax? Not, BodySyntax Body)
{
    public TextSpan Span => Not is null ? Body.Span : Not.Span.Through(Body.Span);
}
