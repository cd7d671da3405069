using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Compiling.Nodes;

internal sealed class ComparisonNode(int id, ImmutableArray<Place> places, Amount left, Comparator comparator, Amount right)
    : StatementNode(id, left.UsesPrecision || right.UsesPrecision, places)
{
    public Amount Left { get; } = left;

    public Amount Right { get; } = right;

    public override bool UsesBound(Examination examination, int instance) =>
        Choices(examination, instance).Any(c => Left.IsBound(examination, c) || Right.IsBound(examination, c));

    public override Truth Test(Examination examination, ReadOnlySpan<int> chosen, bool isWidened)
    {
        if (Left.Of(examination, chosen, isWidened) is not { } a) return Truth.Unknown;
        if (Right.Of(examination, chosen, isWidened) is not { } b) return Truth.Unknown;
        return comparator switch
        {
            Comparator.Above => b.Below(a),
            Comparator.AtLeast => b.AtMost(a),
            Comparator.Below => a.Below(b),
            Comparator.AtMost => a.AtMost(b),
            _ => a.EqualTo(b),
        };
    }
}

internal sealed class BetweenNode(int id, ImmutableArray<Place> places, Amount value, Amount low, Amount high)
    : StatementNode(id, value.UsesPrecision || low.UsesPrecision || high.UsesPrecision, places)
{
    public Amount Value { get; } = value;

    public Amount Low { get; } = low;

    public Amount High { get; } = high;

    public override bool UsesBound(Examination examination, int instance) =>
        Choices(examination, instance).Any(c => Value.IsBound(examination, c));

    public override Truth Test(Examination examination, ReadOnlySpan<int> chosen, bool isWidened)
    {
        if (Value.Of(examination, chosen, isWidened) is not { } value) return Truth.Unknown;
        if (Low.Of(examination, chosen, isWidened) is not { } low) return Truth.Unknown;
        if (High.Of(examination, chosen, isWidened) is not { } high) return Truth.Unknown;
        return Kleene.And(low.AtMost(value), value.AtMost(high));
    }
}

/// <summary>A compiled quantity: an interval in base units, or null where nothing is known of it.</summary>
internal abstract class Amount(bool usesPrecision)
{
    public bool UsesPrecision { get; } = usesPrecision;

    public abstract Interval? Of(Examination examination, ReadOnlySpan<int> chosen, bool isWidened);

    public virtual bool IsBound(Examination examination, int[] chosen) => false;
}

internal sealed class ConstantAmount(Rational value) : Amount(usesPrecision: false)
{
    private readonly Interval _value = Interval.Point(value);

    public override Interval? Of(Examination examination, ReadOnlySpan<int> chosen, bool isWidened) => _value;
}

/// <param name="place">Index into the choice.</param>
internal sealed class MeasureAmount(int place, int slot, Rational precision) : Amount(!precision.IsZero)
{
    public int Place { get; } = place;

    public int Slot { get; } = slot;

    public override Interval? Of(Examination examination, ReadOnlySpan<int> chosen, bool isWidened)
    {
        if (examination.ValueAt(chosen[Place], Slot) is not MeasuredValue measured) return null;
        return isWidened ? measured.Widened(precision) : measured.Interval;
    }

    public override bool IsBound(Examination examination, int[] chosen) =>
        examination.ValueAt(chosen[Place], Slot) is MeasuredValue { IsBound: true };
}

internal sealed class ArithmeticAmount(ArithmeticOperator sign, Amount left, Amount right)
    : Amount(left.UsesPrecision || right.UsesPrecision)
{
    public Amount Left { get; } = left;

    public Amount Right { get; } = right;

    public override bool IsBound(Examination examination, int[] chosen) =>
        Left.IsBound(examination, chosen) || Right.IsBound(examination, chosen);

    public override Interval? Of(Examination examination, ReadOnlySpan<int> chosen, bool isWidened)
    {
        if (Left.Of(examination, chosen, isWidened) is not { } a) return null;
        if (Right.Of(examination, chosen, isWidened) is not { } b) return null;
        return sign switch
        {
            ArithmeticOperator.Add => a + b,
            ArithmeticOperator.Subtract => a - b,
            ArithmeticOperator.Multiply => a * b,
            _ => Interval.Divide(a, b),
        };
    }
}
