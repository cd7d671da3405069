using FindingRules.Language.Syntax;
using FindingRules.Model.Conditions;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Quantities;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Language.Binding;

/// <summary>Whether two quantities can be compared or added. A number without a unit is no length.</summary>
internal sealed class UnitCheck(BindingContext context)
{
    private static readonly Rational Hundred = 100;

    /// <summary>A quantity as written and as meant.</summary>
    public readonly record struct Side(OperandSyntax Written, QuantityExpression Meaning);

    public bool Agree(Side left, Side right)
    {
        var message = MissingUnit(left, right) ?? MissingUnit(right, left);
        if (message is null && left.Meaning.Dimension != right.Meaning.Dimension)
        {
            message = UnitNameMessages.OtherDimension(
                context.At(left.Written.Span.Through(right.Written.Span)),
                context.Written(left.Written.Span), left.Meaning.Dimension.Title,
                context.Written(right.Written.Span), right.Meaning.Dimension.Title);
        }
        if (message is not null) context.Report(message);
        return message is null;
    }

    private Message? MissingUnit(Side bare, Side other)
    {
        if (BareNumber(bare.Written) is not { } number || UnitOf(other.Meaning) is not { } unit || unit == Unit.Plain) return null;
        var (at, otherWords) = (context.At(number.Span), context.Written(other.Written.Span));
        _ = Rational.TryRead(number.Number, out var value);
        if (unit != Unit.Percent || Rational.Abs(value) > Rational.One)
            return UnitNameMessages.NumberWithoutUnit(at, number.Number, otherWords, unit.Name);
        return UnitNameMessages.ShareWithoutUnit(at, number.Number, otherWords, $"{number.Number} %", $"{value * Hundred} %");
    }

    private static NumberSyntax? BareNumber(OperandSyntax operand) => operand switch
    {
        NumberSyntax { Unit: null } number => number,
        BracketSyntax { Inside.Terms: [{ Not: null, Body: BareSyntax inside }] } => BareNumber(inside.Operand),
        _ => null,
    };

    /// <summary>The unit a number beside it would be given in; null where a plain number will do.</summary>
    private static Unit? UnitOf(QuantityExpression expression) => expression switch
    {
        ConstantExpression constant => constant.Quantity.Unit,
        MeasureExpression { Finding.Type: MeasureType type } => type.Unit,
        DerivedExpression derived => derived.Measure.Unit,
        _ when expression.Dimension == Dimension.None => null,
        ArithmeticExpression arithmetic => new[] { UnitOf(arithmetic.Left), UnitOf(arithmetic.Right) }
            .FirstOrDefault(u => u?.Dimension == expression.Dimension) ?? Unit.All.FirstOrDefault(u => u.Dimension == expression.Dimension),
        _ => null,
    };
}
