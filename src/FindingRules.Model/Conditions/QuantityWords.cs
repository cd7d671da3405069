using FindingRules.Model.Quantities;

namespace FindingRules.Model.Conditions;

/// <summary>A calculation as an author would write it.</summary>
internal static class QuantityWords
{
    public static string Of(QuantityExpression expression) => expression switch
    {
        ConstantExpression constant => Constant(constant.Quantity),
        MeasureExpression measure => ConditionWords.Path(measure.Place, measure.Finding.Name),
        DerivedExpression derived => ConditionWords.Path(derived.Place, derived.Measure.Name),
        ArithmeticExpression { Operator: ArithmeticOperator.Multiply, Left: ConstantExpression { Quantity: var number } } product
            when product.Right is MeasureExpression or DerivedExpression && number.Unit == Unit.Plain && number.Number.Sign >= 0 =>
            $"{Constant(number)} {Of(product.Right)}",
        ArithmeticExpression arithmetic => Operation(arithmetic),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string Operation(ArithmeticExpression arithmetic)
    {
        var isSum = IsSum(arithmetic);
        var left = Bracketed(arithmetic.Left, !isSum && IsSum(arithmetic.Left));
        // The right side of an operation is bracketed whenever it is one itself: it was then not read from the left.
        var right = Bracketed(arithmetic.Right, arithmetic.Right is ArithmeticExpression && !(isSum && !IsSum(arithmetic.Right)));
        return $"{left} {CanonicalQuantity.Sign(arithmetic.Operator)} {right}";
    }

    private static string Bracketed(QuantityExpression expression, bool isBracketed) =>
        isBracketed ? $"({Of(expression)})" : Of(expression);

    private static bool IsSum(QuantityExpression expression) =>
        expression is ArithmeticExpression { Operator: ArithmeticOperator.Add or ArithmeticOperator.Subtract };

    // A number that no decimal has comes from a calculation only, never from a text; then it is said as a quotient.
    private static string Constant(Quantity quantity)
    {
        var unit = quantity.Unit == Unit.Plain ? "" : $" {quantity.Unit.Name}";
        var text = quantity.Number.ToDecimalText(out var isExact);
        return isExact ? text + unit : $"({quantity.Number.Numerator}{unit} / {quantity.Number.Denominator})";
    }
}
