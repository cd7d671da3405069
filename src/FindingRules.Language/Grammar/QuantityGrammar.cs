using System.Collections.Immutable;
using FindingRules.Language.Lexing;
using FindingRules.Language.Syntax;
using FindingRules.Model.Conditions;
using Sprache;

namespace FindingRules.Language.Grammar;

/// <summary>
/// sum      = product { ("+" | "-") product }
/// product  = quantity { ("*" | "/") quantity }
/// quantity = number [ unit | phrase | brackets ] | phrase | brackets
/// Brackets hold a condition as far as the grammar knows: one way in, nothing is tried twice.
/// </summary>
internal static class QuantityGrammar
{
    public static readonly Parser<NumberSyntax> Number =
        from minus in Connecting.Minus.Maybe()
        from number in Lexeme.Number
        from unit in Lexeme.UnitName.Maybe()
        select NumberOf(minus, number, unit);

    public static readonly Parser<BracketSyntax> Bracket =
        from open in Connecting.Open
        from inside in Combinators.Recurse(() => ConditionGrammar.Chain)
        from close in Connecting.Close
        select new BracketSyntax(inside, open.Span.Through(close.Span));

    private static readonly Parser<OperandSyntax> Times =
        Bracket.Select(b => (OperandSyntax)b).XOr(PhraseGrammar.Phrase);

    private static readonly Parser<OperandSyntax> NumberOrProduct =
        from number in Number
        from times in number.Unit is null ? Times.Maybe() : Parse.Return<OperandSyntax?>(null)
        select times is null
            ? (OperandSyntax)number
            : new ArithmeticSyntax(ArithmeticOperator.Multiply, number, times, IsUnwritten: true);

    private static readonly Parser<OperandSyntax> Quantity = NumberOrProduct.XOr(Times).Expecting("a quantity");

    private static readonly Parser<OperandSyntax> Product =
        Quantity.ChainedBy(Connecting.MultiplyOrDivide).Select(c => FromTheLeft(c.First, c.More));

    public static readonly Parser<OperandSyntax> Sum =
        Product.ChainedBy(Connecting.AddOrSubtract).Select(c => FromTheLeft(c.First, c.More));

    private static OperandSyntax FromTheLeft(OperandSyntax first, ImmutableArray<(ArithmeticOperator By, OperandSyntax Part)> more) =>
        more.Aggregate(first, (left, next) => new ArithmeticSyntax(next.By, left, next.Part, IsUnwritten: false));

    private static NumberSyntax NumberOf(WordSyntax? minus, WordSyntax number, WordSyntax? unit)
    {
        var span = (minus ?? number).Span.Through((unit ?? number).Span);
        return new NumberSyntax((minus is null ? "" : "-") + number.Text, unit, span);
    }
}
