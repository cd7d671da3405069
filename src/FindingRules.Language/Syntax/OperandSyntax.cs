using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Text;

namespace FindingRules.Language.Syntax;

/// <summary>What may stand before or behind a comparison; its words have no meaning yet.</summary>
internal abstract record OperandSyntax(TextSpan Span);

/// <summary>
/// A run of the author's words, such as <c>contralateral thickness</c> or <c>biceps subluxed</c>. Which of them is a
/// structure, a finding or a value only the vocabulary can say.
/// </summary>
/// <param name="Prefixes">earlier, ipsilateral, contralateral, study.</param>
/// <param name="Words">At least one, save before <c>assessed</c>: <c>contralateral assessed</c>.</param>
internal sealed record PhraseSyntax(ImmutableArray<WordSyntax> Prefixes, ImmutableArray<WordSyntax> Words)
    : OperandSyntax((Prefixes.IsEmpty ? Words[0] : Prefixes[0]).Span.Through((Words.IsEmpty ? Prefixes[^1] : Words[^1]).Span));

internal sealed record NumberSyntax(string Number, WordSyntax? Unit, TextSpan Span) : OperandSyntax(Span);

/// <param name="Operator">What is worked out.</param>
/// <param name="Left">Before the operator.</param>
/// <param name="Right">Behind the operator.</param>
/// <param name="IsUnwritten">A product without its sign: <c>1.5 contralateral thickness</c>.</param>
internal sealed record ArithmeticSyntax(ArithmeticOperator Operator, OperandSyntax Left, OperandSyntax Right, bool IsUnwritten)
    : OperandSyntax(Left.Span.Through(Right.Span));

/// <summary>Brackets around a condition or around a quantity: which, only what follows can say.</summary>
internal sealed record BracketSyntax(ChainSyntax Inside, TextSpan Span) : OperandSyntax(Span);
