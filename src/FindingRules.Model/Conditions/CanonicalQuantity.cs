using FindingRules.Model.Quantities;

namespace FindingRules.Model.Conditions;

/// <summary>The canonical text of a calculation: numbers in base units, every operation in brackets.</summary>
internal static class CanonicalQuantity
{
    public static string Of(QuantityExpression expression) => expression switch
    {
        ConstantExpression constant => $"{constant.Quantity.InBase}{Of(constant.Dimension)}",
        MeasureExpression measure => $"{CanonicalCondition.At(measure.Place)} {measure.Finding.Name}",
        DerivedExpression derived => $"{CanonicalCondition.At(derived.Place)} derived {derived.Measure.Name}",
        ArithmeticExpression arithmetic => $"({Of(arithmetic.Left)} {Sign(arithmetic.Operator)} {Of(arithmetic.Right)})",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    public static char Sign(ArithmeticOperator arithmetic) => arithmetic switch
    {
        ArithmeticOperator.Add => '+',
        ArithmeticOperator.Subtract => '-',
        ArithmeticOperator.Multiply => '*',
        _ => '/',
    };

    private static string Of(Dimension dimension) =>
        Power("mm", dimension.Length) + Power("s", dimension.Second) + Power("deg", dimension.Angle) + Power("months", dimension.Month);

    private static string Power(string unit, int power) => power switch
    {
        0 => "",
        1 => $" {unit}",
        _ => $" {unit}^{power}",
    };
}
