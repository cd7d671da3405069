using FindingRules.Language.Syntax;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Quantities;
using FindingRules.Model.Text;

namespace FindingRules.Language.Binding;

/// <summary>A written quantity or stretch of them to base units.</summary>
internal sealed class RangeBinder(MappedText text, Unit unit, MessageBag messages)
{
    public Quantity? Bind(NumberSyntax number)
    {
        var quantity = QuantityBinder.QuantityOf(number);
        var at = text.At(number.Span);
        if (number.Unit is null && unit != Unit.Plain)
        {
            // A bare 0.5 may be half of it or half a percent.
            var isClear = unit != Unit.Percent || Rational.Abs(quantity.Number) > Rational.One;
            var mended = isClear ? $"{number.Number} {unit.Name}" : null;
            messages.Add(UnitNameMessages.UnitMissing(at, number.Number, unit.Name, mended));
            return null;
        }
        if (quantity.Unit.Dimension == unit.Dimension) return quantity;
        messages.Add(UnitNameMessages.WrongUnit(
            at, quantity.ToString(), quantity.Unit.Dimension.Title, unit.Name, unit.Dimension.Title));
        return null;
    }

    public Interval? Bind(RangeSyntax range)
    {
        var low = range.Low is null ? null : Bind(range.Low.Number);
        var high = range.High is null ? null : ReferenceEquals(range.Low, range.High) ? low : Bind(range.High.Number);
        if ((range.Low is not null && low is null) || (range.High is not null && high is null)) return null;
        var interval = new Interval(
            low?.InBase, range.Low?.IsIncluded ?? false, high?.InBase, range.High?.IsIncluded ?? false);
        if (!interval.IsEmpty) return interval;
        messages.Add(UnitNameMessages.EmptyRange(text.At(range.Span), text.Text.Substring(range.Span.Start, range.Span.Length)));
        return null;
    }
}
