using FindingRules.Language.Lexing;
using FindingRules.Language.Syntax;
using FindingRules.Model.Conditions;
using FindingRules.Model.Text;
using Sprache;

namespace FindingRules.Language.Grammar;

/// <summary>
/// range = [ "from" ] number upper | ( "above" | "at least" ) number [ upper ] | compare number
/// upper = "to" [ "below" ] number
/// </summary>
internal static class RangeGrammar
{
    private static readonly Parser<NumberSyntax> Number = QuantityGrammar.Number.Expecting("a quantity");

    private static readonly Parser<RangeEndSyntax> Upper =
        from to in Connecting.To
        from below in Lexeme.Keyword("below").Maybe()
        from number in Number
        select new RangeEndSyntax(number, IsIncluded: below is null);

    private static readonly Parser<RangeSyntax> Closed =
        from word in Lexeme.Keyword("from").Maybe()
        from low in Number
        from high in Upper
        select new RangeSyntax(new RangeEndSyntax(low, IsIncluded: true), high, SpanOf(low, high));

    private static readonly Parser<RangeSyntax> OneSided =
        from comparator in Connecting.Compare
        from number in Number
        from high in comparator is Comparator.Above or Comparator.AtLeast ? Upper.Maybe() : Parse.Return<RangeEndSyntax?>(null)
        select Sided(comparator, number, high);

    public static readonly Parser<RangeSyntax> Range =
        from range in OneSided.XOr(Closed).Expecting("a stretch such as `1 mm to 30 mm` or `above 5 mm`")
        from end in Connecting.End
        select range;

    public static readonly Parser<NumberSyntax> Quantity =
        from quantity in Number
        from end in Connecting.End
        select quantity;

    private static RangeSyntax Sided(Comparator comparator, NumberSyntax number, RangeEndSyntax? high)
    {
        var end = new RangeEndSyntax(number, comparator is not (Comparator.Above or Comparator.Below));
        return comparator switch
        {
            Comparator.Above or Comparator.AtLeast => new RangeSyntax(end, high, SpanOf(number, high)),
            Comparator.Below or Comparator.AtMost => new RangeSyntax(null, end, number.Span),
            _ => new RangeSyntax(end, end, number.Span),
        };
    }

    private static TextSpan SpanOf(NumberSyntax low, RangeEndSyntax? high) =>
        high is null ? low.Span : low.Span.Through(high.Number.Span);
}
