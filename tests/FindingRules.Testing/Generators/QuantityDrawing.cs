using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Vocabularies;
using static FindingRules.Testing.Generators.ModelOf;

namespace FindingRules.Testing.Generators;

/// <summary>Lengths, plain numbers and areas, all near the values that studies are drawn with.</summary>
internal sealed class QuantityDrawing(Draw draw, PlaceDrawing places, IReadOnlyList<DerivedMeasure> derived)
{
    public static readonly Dimension Length = Unit.Millimetre.Dimension;

    /// <summary>Two or three quantities of one dimension, the first of them measured.</summary>
    public (QuantityExpression First, QuantityExpression Second, QuantityExpression Third) Comparable(Scope own)
    {
        if (own.IsStudy) return (Age(own), Constant(Unit.Year, 20, 70), Constant(Unit.Year, 40, 90));
        return draw.Weighted<Func<(QuantityExpression, QuantityExpression, QuantityExpression)>>(
            (50, () => (LengthOf(own, 1), Threshold(), Threshold())),
            (25, () => (LengthOf(own, 1), LengthOf(own, 1), Threshold())),
            (12, () => (Plain(own), Constant(Unit.Percent, 30, 250), Constant(Unit.Plain, 0, 3))),
            (6, () => (Area(own), Constant(Unit.SquareMillimetre, 0, 60), Constant(Unit.SquareCentimetre, 0, 1))),
            (7, () => (Age(own), Constant(Unit.Year, 20, 70), Constant(Unit.Month, 400, 900))))();
    }

    public QuantityExpression LengthOf(Scope own, int depth)
    {
        var kind = depth == 0 ? 0 : draw.Below(100);
        if (kind < 60) return MeasureOf(own);
        if (kind < 74)
            return Arithmetic(
                draw.Of(ArithmeticOperator.Add, ArithmeticOperator.Subtract), LengthOf(own, depth - 1),
                draw.Chance(50) ? Threshold() : LengthOf(own, depth - 1), Length);
        if (kind < 84) return Arithmetic(ArithmeticOperator.Multiply, Constant(Unit.Plain, 0, 2), LengthOf(own, depth - 1), Length);
        if (kind < 88) return Arithmetic(ArithmeticOperator.Divide, Area(own), LengthOf(own, depth - 1), Length);
        return Derived(own, Length) is { } derivedLength ? derivedLength : MeasureOf(own);
    }

    public QuantityExpression Plain(Scope own) => draw.Chance(30) && Derived(own, Dimension.None) is { } share
        ? share
        : Arithmetic(ArithmeticOperator.Divide, LengthOf(own, 0), LengthOf(own, 1), Dimension.None);

    private ArithmeticExpression Area(Scope own) =>
        Arithmetic(ArithmeticOperator.Multiply, LengthOf(own, 0), LengthOf(own, 0), Unit.SquareMillimetre.Dimension);

    private MeasureExpression Age(Scope own) => new(
        Place.Study with { IsEarlier = draw.Chance(own.IsStudy ? 20 : 5) }, places.StudyMeasure, Unit.Year.Dimension, Nowhere);

    private DerivedExpression? Derived(Scope own, Dimension dimension)
    {
        var (place, kind) = places.Any(own);
        var fitting = derived.Where(d => d.Unit.Dimension == dimension && kind is not null && kind.IsA(d.Scope.Kind!)).ToList();
        return fitting.Count == 0 ? null : new DerivedExpression(place, draw.Of(fitting), Nowhere);
    }

    private MeasureExpression MeasureOf(Scope own)
    {
        for (var tries = 0; tries < 4; tries++)
            if (places.Find<MeasureType>(own) is (var place, { Type: MeasureType { Unit: var unit } } finding) && unit.Dimension == Length)
                return new MeasureExpression(place, finding, Length, Nowhere);
        return new MeasureExpression(Place.Own, own.Kind!.Findings["thickness"], Length, Nowhere);
    }

    private ConstantExpression Threshold() => draw.Chance(80)
        ? Constant(Unit.Millimetre, 1, VocabularyDrawing.GreatestLength - 2)
        : new ConstantExpression(new Quantity(new Rational(draw.Between(1, 10), 10), Unit.Centimetre), Nowhere);

    private ConstantExpression Constant(Unit unit, int low, int high)
    {
        var half = draw.Chance(15) ? new Rational(1, 2) : Rational.Zero;
        return new ConstantExpression(new Quantity(draw.Between(low, high) + half, unit), Nowhere);
    }

    private static ArithmeticExpression Arithmetic(
        ArithmeticOperator by, QuantityExpression left, QuantityExpression right, Dimension dimension) =>
        new(by, left, right, dimension, Nowhere);
}
