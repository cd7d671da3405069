using System.Collections.Immutable;
using FindingRules.Model.Text;

namespace FindingRules.Language.Syntax;

internal sealed record RuleSyntax(ChainSyntax Condition, ImmutableArray<ConclusionSyntax> Conclusions);

/// <param name="Opening">evaluate, hold or caution, where one was written.</param>
/// <param name="Words">The author's words.</param>
/// <param name="Next">The word next, where it was written.</param>
internal sealed record ConclusionSyntax(WordSyntax? Opening, ImmutableArray<WordSyntax> Words, WordSyntax? Next)
{
    /// <summary>Where a probability is stated; the word is then the reference.</summary>
    public ProbabilitySyntax? Probability { get; init; }

    public TextSpan Span => (Opening ?? Words[0]).Span.Through((Next ?? Words[^1]).Span);

    public TextSpan WordsSpan => Words[0].Span.Through(Words[^1].Span);
}

/// <param name="Before">The probability before the finding.</param>
/// <param name="Sign">positive or negative: whether the finding was there.</param>
internal sealed record ProbabilitySyntax(OperandSyntax Before, WordSyntax Sign);
