using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Model.Conditions;

/// <summary>Something that has a quantity. Its value is an interval in base units, or unknown.</summary>
public abstract record QuantityExpression(Dimension Dimension, Location Location);

public sealed record ConstantExpression(Quantity Quantity, Location Location)
    : QuantityExpression(Quantity.Unit.Dimension, Location);

public sealed record MeasureExpression(Place Place, Finding Finding, Dimension Dimension, Location Location)
    : QuantityExpression(Dimension, Location);

/// <summary>A derived measure; its expression is worked out at <paramref name="Place"/> as its own.</summary>
public sealed record DerivedExpression(Place Place, DerivedMeasure Measure, Location Location)
    : QuantityExpression(Measure.Unit.Dimension, Location);

/// <summary>A quotient whose divisor may be zero is unknown.</summary>
public sealed record ArithmeticExpression(
    ArithmeticOperator Operator, QuantityExpression Left, QuantityExpression Right, Dimension Dimension, Location Location)
    : QuantityExpression(Dimension, Location);

public enum ArithmeticOperator
{
    Add,
    Subtract,
    Multiply,
    Divide,
}
