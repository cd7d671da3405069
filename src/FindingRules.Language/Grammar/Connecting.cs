using FindingRules.Language.Lexing;
using FindingRules.Language.Syntax;
using FindingRules.Model.Conditions;
using Sprache;

namespace FindingRules.Language.Grammar;

/// <summary>The words and marks between the author's words.</summary>
internal static class Connecting
{
    public static readonly Parser<WordSyntax> Not = Lexeme.Keyword("not");

    public static readonly Parser<WordSyntax> Open = Lexeme.Symbol("(");

    public static readonly Parser<WordSyntax> Close = Lexeme.Symbol(")").Expecting("`)`");

    public static readonly Parser<WordSyntax> To = Lexeme.Keyword("to").Expecting("`to`");

    public static readonly Parser<WordSyntax> Arrow = Lexeme.Symbol("→").XOr(Lexeme.Symbol("->")).Expecting("`→`");

    public static readonly Parser<WordSyntax> End = Lexeme.End.Expecting("the end");

    public static readonly Parser<ConnectorSyntax> AndOr =
        Lexeme.Keyword("and").Select(w => new ConnectorSyntax(true, w.Span))
            .XOr(Lexeme.Keyword("or").Select(w => new ConnectorSyntax(false, w.Span)))
            .Expecting("`and`", "`or`");

    /// <summary><c>at least</c>, <c>at most</c>: a lone <c>at</c> is not a comparison yet.</summary>
    private static readonly Parser<Comparator> AtLeastOrMost =
        from at in Lexeme.Keyword("at")
        from which in Lexeme.Keyword("least").Select(_ => Comparator.AtLeast)
            .XOr(Lexeme.Keyword("most").Select(_ => Comparator.AtMost))
            .Expecting("`least`", "`most`")
        select which;

    public static readonly Parser<Comparator> Compare =
        Mark(">=", Comparator.AtLeast)
            .XOr(Mark("≥", Comparator.AtLeast))
            .XOr(Mark("<=", Comparator.AtMost))
            .XOr(Mark("≤", Comparator.AtMost))
            .XOr(Mark(">", Comparator.Above))
            .XOr(Mark("<", Comparator.Below))
            .XOr(Mark("=", Comparator.Equal))
            .XOr(Lexeme.Keyword("above").Select(_ => Comparator.Above))
            .XOr(Lexeme.Keyword("below").Select(_ => Comparator.Below))
            .XOr(AtLeastOrMost);

    public static readonly Parser<ArithmeticOperator> AddOrSubtract =
        Lexeme.Symbol("+").Select(_ => ArithmeticOperator.Add).XOr(Minus.Select(_ => ArithmeticOperator.Subtract));

    public static readonly Parser<ArithmeticOperator> MultiplyOrDivide =
        Lexeme.Symbol("*").Select(_ => ArithmeticOperator.Multiply).XOr(Lexeme.Symbol("/").Select(_ => ArithmeticOperator.Divide));

    /// <summary>A minus sign, which the arrow begins with as well.</summary>
    public static Parser<WordSyntax> Minus =>
        i => ((RuleInput)i).Rest.StartsWith("->", StringComparison.Ordinal)
            ? Result.Failure<WordSyntax>(i, "", [])
            : Dash(i);

    private static Parser<WordSyntax> Dash { get; } = Lexeme.Symbol("-");

    private static Parser<Comparator> Mark(string mark, Comparator comparator) =>
        Lexeme.Symbol(mark).Select(_ => comparator);
}
