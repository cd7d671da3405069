using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Explaining.Changing;

/// <summary>
/// Finds where a comparison turns as one of its measures changes. It only proposes values to try: whether a value does
/// what it should is always decided by the engine.
/// </summary>
/// <param name="now">What is known of a measure now; null where nothing is.</param>
internal sealed class ComparisonSolver(Func<Place, Finding, Interval?> now)
{
    public IsCompared Of(Statement statement, Place place, Finding finding)
    {
        var (sides, holds) = Sides(statement);
        var others = sides.SelectMany(s => MeasuresIn.Of(s.Left, Place.Own).Concat(MeasuresIn.Of(s.Right, Place.Own)))
            .Where(m => m.Place != place || m.Finding != finding).ToList();
        var edges = ImmutableArray.CreateBuilder<Rational>();
        // Something unknown keeps it unknown for every value.
        var isExact = others.TrueForAll(m => now(m.Place, m.Finding) is not { IsPoint: false });
        foreach (var side in sides)
        {
            Rational? Difference(Rational x) =>
                Value(side.Left, Place.Own, place, finding, x) - Value(side.Right, Place.Own, place, finding, x);
            if (Root(Difference) is { } root) edges.Add(root);
            else if (Root(x => Difference(x) * x) is { } quotientRoot) edges.Add(quotientRoot);
            else isExact &= IsConstant(Difference);
        }
        return new IsCompared(
            x => holds([.. sides.Select(s => Sign(s, place, finding, x))]), edges.ToImmutable(), isExact, others.Count == 0);
    }

    private static (ImmutableArray<(QuantityExpression Left, QuantityExpression Right)>, Func<int?[], Truth>) Sides(Statement statement) =>
        statement switch
        {
            ComparisonStatement s => ([(s.Left, s.Right)], signs => Compare(s.Comparator, signs[0])),
            BetweenStatement s => (
                [(s.Value, s.Low), (s.Value, s.High)],
                signs => Kleene.And(Compare(Comparator.AtLeast, signs[0]), Compare(Comparator.AtMost, signs[1]))),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private int? Sign((QuantityExpression Left, QuantityExpression Right) side, Place place, Finding finding, Rational x) =>
        (Value(side.Left, Place.Own, place, finding, x) - Value(side.Right, Place.Own, place, finding, x))?.Sign;

    private static Truth Compare(Comparator comparator, int? sign) => sign is not { } s ? Truth.Unknown : Kleene.Of(comparator switch
    {
        Comparator.Above => s > 0,
        Comparator.AtLeast => s >= 0,
        Comparator.Below => s < 0,
        Comparator.AtMost => s <= 0,
        _ => s == 0,
    });

    private Rational? Value(QuantityExpression expression, Place from, Place place, Finding finding, Rational x) => expression switch
    {
        ConstantExpression constant => constant.Quantity.InBase,
        MeasureExpression measure => PlaceComposition.From(from, measure.Place) is var at && at == place && measure.Finding == finding
            ? x
            : Now(at, measure.Finding),
        DerivedExpression derived => Value(derived.Measure.Is, PlaceComposition.From(from, derived.Place), place, finding, x),
        ArithmeticExpression sum => Combine(
            sum.Operator, Value(sum.Left, from, place, finding, x), Value(sum.Right, from, place, finding, x)),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static Rational? Combine(ArithmeticOperator by, Rational? left, Rational? right) => by switch
    {
        ArithmeticOperator.Add => left + right,
        ArithmeticOperator.Subtract => left - right,
        ArithmeticOperator.Multiply => left * right,
        _ => right is null or { IsZero: true } ? null : left / right,
    };

    /// <summary>Of a measure that is not known, something ordinary: the middle of its normal or plausible range.</summary>
    private Rational? Now(Place place, Finding finding)
    {
        var type = (MeasureType)finding.Type;
        var interval = now(place, finding) ?? type.Normal ?? type.Plausible;
        return (interval.Low, interval.High) switch
        {
            ({ } low, { } high) => (low + high) / 2,
            ({ } low, null) => low,
            (null, { } high) => high,
            _ => null,
        };
    }

    /// <summary>Of a straight line that is not level.</summary>
    private static Rational? Root(Func<Rational, Rational?> line)
    {
        if (line(1) is not { } one || line(2) is not { } two || line(3) is not { } three) return null;
        var slope = two - one;
        return slope.IsZero || three - two != slope ? null : 1 - (one / slope);
    }

    private static bool IsConstant(Func<Rational, Rational?> line) => line(1) is { } one && line(2) == one && line(3) == one;
}
