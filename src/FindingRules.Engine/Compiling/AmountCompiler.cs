using System.Collections.Immutable;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Model.Conditions;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Compiling;

/// <summary>Quantity expressions in, amounts out; derived measures are replaced by what they are worked out from.</summary>
internal sealed class AmountCompiler(FindingSlots slots, ImmutableArray<Place> places)
{
    public Amount Compile(QuantityExpression expression, Place from) => expression switch
    {
        ConstantExpression constant => new ConstantAmount(constant.Quantity.InBase),
        MeasureExpression measure => new MeasureAmount(
            places.IndexOf(PlaceComposition.From(from, measure.Place)), slots[measure.Finding],
            ((MeasureType)measure.Finding.Type).Precision),
        DerivedExpression derived => Compile(derived.Measure.Is, PlaceComposition.From(from, derived.Place)),
        ArithmeticExpression arithmetic => new ArithmeticAmount(
            arithmetic.Operator, Compile(arithmetic.Left, from), Compile(arithmetic.Right, from)),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    public string KeyOf(QuantityExpression expression, Place from) => expression switch
    {
        ConstantExpression constant => constant.Quantity.InBase.ToString(),
        MeasureExpression measure => $"{PlaceComposition.From(from, measure.Place)} {KeyOf(measure.Finding, slots[measure.Finding])}",
        DerivedExpression derived => KeyOf(derived.Measure.Is, PlaceComposition.From(from, derived.Place)),
        ArithmeticExpression sum => $"({KeyOf(sum.Left, from)} {sum.Operator} {KeyOf(sum.Right, from)})",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>Two kinds may each have a finding of one name in one slot, with another precision: they are not the same.</summary>
    public static string KeyOf(Finding finding, int slot) => $"{finding.Name}@{slot}#{(finding.Type as MeasureType)?.Precision}";

    public static void CollectPlaces(QuantityExpression expression, Place from, List<Place> used)
    {
        switch (expression)
        {
            case MeasureExpression measure:
                used.Add(PlaceComposition.From(from, measure.Place));
                break;
            case DerivedExpression derived:
                CollectPlaces(derived.Measure.Is, PlaceComposition.From(from, derived.Place), used);
                break;
            case ArithmeticExpression arithmetic:
                CollectPlaces(arithmetic.Left, from, used);
                CollectPlaces(arithmetic.Right, from, used);
                break;
        }
    }
}
