using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reference;

/// <summary>All the values a quantity may have for each choice of lesions; null where that is unknown.</summary>
internal sealed class QuantityValue(Whereabouts whereabouts, bool isWidened)
{
    public IEnumerable<(Choices Choices, Interval? Value)> Of(QuantityExpression expression, Spot own, Choices choices) =>
        expression switch
        {
            ConstantExpression constant => [(choices, Interval.Point(constant.Quantity.InBase))],
            MeasureExpression measure =>
                from at in choices.At(measure.Place, own, whereabouts)
                select (at.Choices, Measured(measure.Finding, whereabouts.Find(at.Spot, measure.Finding))),
            DerivedExpression derived =>
                from at in choices.At(derived.Place, own, whereabouts)
                from value in at.Spot is null ? [(at.Choices, null)] : Of(derived.Measure.Is, at.Spot, at.Choices)
                select value,
            ArithmeticExpression arithmetic =>
                from left in Of(arithmetic.Left, own, choices)
                from right in Of(arithmetic.Right, own, left.Choices)
                select (right.Choices, Combine(left.Value, arithmetic.Operator, right.Value)),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private Interval? Measured(Finding finding, FindingValue? value)
    {
        if (value is not MeasuredValue measured) return null;
        return isWidened && finding.Type is MeasureType type ? measured.Widened(type.Precision) : measured.Interval;
    }

    private static Interval? Combine(Interval? left, ArithmeticOperator by, Interval? right)
    {
        if (left is not { } a || right is not { } b) return null;
        return by switch
        {
            ArithmeticOperator.Add => a + b,
            ArithmeticOperator.Subtract => a - b,
            ArithmeticOperator.Multiply => a * b,
            _ => Interval.Divide(a, b),
        };
    }
}
