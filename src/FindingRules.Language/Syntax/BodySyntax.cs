using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Text;

namespace FindingRules.Language.Syntax;

/// <summary>One statement, bracket or quantified condition.</summary>
internal abstract record BodySyntax(TextSpan Span);

/// <summary>An operand alone: a sign, a finding with its value, or brackets around a condition.</summary>
internal sealed record BareSyntax(OperandSyntax Operand) : BodySyntax(Operand.Span);

/// <summary><c>position is subluxed</c>, <c>position not subluxed</c>.</summary>
internal sealed record IsSyntax(OperandSyntax Operand, WordSyntax? Not, ImmutableArray<WordSyntax> Values)
    : BodySyntax(Operand.Span.Through(Values[^1].Span));

internal sealed record NoSyntax(WordSyntax No, PhraseSyntax Phrase) : BodySyntax(No.Span.Through(Phrase.Span));

internal sealed record ComparisonSyntax(OperandSyntax Left, Comparator Comparator, OperandSyntax Right)
    : BodySyntax(Left.Span.Through(Right.Span));

internal sealed record BetweenSyntax(OperandSyntax Value, OperandSyntax Low, OperandSyntax High)
    : BodySyntax(Value.Span.Through(High.Span));

/// <param name="Operand">The extent.</param>
/// <param name="Relation">spans, reaches or within.</param>
/// <param name="From">The first or only point.</param>
/// <param name="To">The second point, where one was written.</param>
/// <param name="Axis">The axis, where it was written.</param>
internal sealed record ExtentSyntax(
    OperandSyntax Operand, ExtentRelation Relation, WordSyntax From, WordSyntax? To, WordSyntax? Axis)
    : BodySyntax(Operand.Span.Through((Axis ?? To ?? From).Span));

/// <param name="Operand">What was assessed; null where the word stands alone and means the subject itself.</param>
/// <param name="Not">The word not, where it was written.</param>
/// <param name="Assessed">The word itself.</param>
internal sealed record AssessedSyntax(OperandSyntax? Operand, WordSyntax? Not, WordSyntax Assessed)
    : BodySyntax((Operand?.Span ?? Assessed.Span).Through(Assessed.Span));

/// <param name="Operand">What could not be assessed.</param>
/// <param name="Assessable">The last word, behind <c>not</c>.</param>
internal sealed record NotAssessableSyntax(OperandSyntax Operand, WordSyntax Assessable)
    : BodySyntax(Operand.Span.Through(Assessable.Span));

/// <param name="Opening">any, every, no or at.</param>
/// <param name="Quantifier">What is counted.</param>
/// <param name="Count">The number of <c>at least 2</c>.</param>
/// <param name="Range">The words that name the kind or the structure.</param>
/// <param name="Where">What is asked of each.</param>
internal sealed record QuantifiedSyntax(
    WordSyntax Opening, Quantifier Quantifier, WordSyntax? Count, ImmutableArray<WordSyntax> Range, BracketSyntax Where)
    : BodySyntax(Opening.Span.Through(Where.Span));
