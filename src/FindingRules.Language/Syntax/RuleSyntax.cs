using System.Collections.Immutable;
using FindingRules.Model.Text;

namespace FindingRules.Language.Syntax;

internal sealed record RuleSyntax(ChainSyntax Condition, ImmutableArray<ConclusionSyntax> Conclusions);

/// <param name="Opening">evaluate, hold or caution, where one was written.</param>
/// <param name="Words">The author's words.</param>
/// <param name="Next">The word next, where it was written.</param>
internal sealed record ConclusionSyntax(WordSyntax? Opening, ImmutableArray<WordSyntax> Words, WordSyntax? Next)
{
    public TextSpan Span => (Opening ?? Words[0]).Span.Through((Next ?? Words[^1]).Span);

    public TextSpan WordsSpan => Words[0].Span.Through(Words[^1].Span);
}
