using FindingRules.Language.Lexing;
using FindingRules.Language.Syntax;
using FindingRules.Model.Conditions;
using Sprache;

namespace FindingRules.Language.Grammar;

/// <summary>
/// statement = sum [ tail ]
/// tail      = compare sum | "between" sum "and" sum | extent | [ "not" ] "assessed" | "not" "assessable" | "is" … | "not" word
/// Each tail begins with a word of its own and is then bound to go through.
/// </summary>
internal static class StatementGrammar
{
    private static readonly Parser<Func<OperandSyntax, BodySyntax>> Comparison =
        from comparator in Connecting.Compare
        from right in QuantityGrammar.Sum
        select Tail(left => new ComparisonSyntax(left, comparator, right));

    private static readonly Parser<Func<OperandSyntax, BodySyntax>> Between =
        from between in Lexeme.Keyword("between")
        from low in QuantityGrammar.Sum
        from and in Lexeme.Keyword("and").Expecting("`and`")
        from high in QuantityGrammar.Sum
        select Tail(value => new BetweenSyntax(value, low, high));

    private static readonly Parser<WordSyntax> Point = Lexeme.Name.Expecting("a point of an axis");

    private static readonly Parser<Func<OperandSyntax, BodySyntax>> Spans =
        from spans in Lexeme.Keyword("spans")
        from start in Point
        from to in Connecting.To
        from end in Point
        from axis in Lexeme.Name.Maybe()
        select Tail(o => new ExtentSyntax(o, ExtentRelation.Spans, start, end, axis));

    private static readonly Parser<Func<OperandSyntax, BodySyntax>> Reaches =
        from reaches in Lexeme.Keyword("reaches")
        from point in Point
        from axis in Lexeme.Name.Maybe()
        select Tail(o => new ExtentSyntax(o, ExtentRelation.Reaches, point, null, axis));

    private static readonly Parser<Func<OperandSyntax, BodySyntax>> Within =
        from within in Lexeme.Keyword("within")
        from start in Point
        from end in (from to in Connecting.To from point in Point select point).Maybe()
        from axis in Lexeme.Name.Maybe()
        select Tail(o => new ExtentSyntax(o, ExtentRelation.Within, start, end, axis));

    private static readonly Parser<Func<OperandSyntax, BodySyntax>> Assessed =
        from assessed in Lexeme.Keyword("assessed")
        select Tail(o => new AssessedSyntax(o, null, assessed));

    private static readonly Parser<Func<OperandSyntax, BodySyntax>> Value =
        from values in PhraseGrammar.Words
        select Tail(o => new IsSyntax(o, null, values));

    private static readonly Parser<Func<OperandSyntax, BodySyntax>> Assessable =
        from assessable in Lexeme.Keyword("assessable")
        select Tail(o => new NotAssessableSyntax(o, assessable));

    private static readonly Parser<Func<OperandSyntax, BodySyntax>> NotTail =
        from not in Connecting.Not
        from rest in Assessed.XOr(Assessable).XOr(Value).Expecting("a value", "`assessed`")
        select Tail(o => rest(o) switch
        {
            AssessedSyntax assessed => assessed with { Not = not },
            IsSyntax value => value with { Not = not },
            var other => other,
        });

    private static readonly Parser<Func<OperandSyntax, BodySyntax>> Quantified = Comparison.XOr(Between);

    private static readonly Parser<Func<OperandSyntax, BodySyntax>> IsTail =
        from verb in Lexeme.Keyword("is")
        from rest in NotTail.XOr(Quantified).XOr(Within).XOr(Assessed).XOr(Value).Expecting("a value", "a comparison")
        select rest;

    /// <summary>The word alone: the subject itself was assessed.</summary>
    public static readonly Parser<BodySyntax> AssessedAlone =
        Lexeme.Keyword("assessed").Select(assessed => (BodySyntax)new AssessedSyntax(null, null, assessed));

    public static readonly Parser<BodySyntax> Statement =
        from operand in QuantityGrammar.Sum
        from tail in IsTail.XOr(NotTail).XOr(Quantified).XOr(Spans).XOr(Reaches).XOr(Within).XOr(Assessed)
            .Expecting("a comparison").Maybe()
        select tail is null ? new BareSyntax(operand) : tail(operand);

    private static Func<OperandSyntax, BodySyntax> Tail(Func<OperandSyntax, BodySyntax> tail) => tail;
}
