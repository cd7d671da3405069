using FindingRules.Engine.Compiling;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>What the parts of a comparison came to, for one choice of instances, worked out by the network's own amounts.</summary>
internal sealed class AmountReader(Examination examination, StatementNode node, int[] chosen)
{
    public Interval? Value(QuantityExpression expression, Place from, bool isWidened = false) =>
        new AmountCompiler(examination.Network.Slots, node.Places).Compile(expression, from).Of(examination, chosen, isWidened);

    /// <summary>The unit to show it in: that of the value as sent, before that of the vocabulary.</summary>
    public Unit? UnitOf(QuantityExpression expression, Place from) => expression switch
    {
        ConstantExpression constant => constant.Quantity.Unit,
        MeasureExpression measure => (ValueOf(PlaceComposition.From(from, measure.Place), measure.Finding) as MeasuredValue)?.Unit
            ?? ((MeasureType)measure.Finding.Type).Unit,
        DerivedExpression derived => derived.Measure.Unit,
        ArithmeticExpression sum =>
            new[] { UnitOf(sum.Left, from), UnitOf(sum.Right, from) }.FirstOrDefault(u => u?.Dimension == sum.Dimension)
            ?? Unit.All.FirstOrDefault(u => u.Dimension == sum.Dimension && u.InBase == Rational.One),
        _ => null,
    };

    /// <summary>The instance chosen for a place, or -1.</summary>
    public int InstanceAt(Place place) => node.Places.IndexOf(place) is var i && i >= 0 ? chosen[i] : -1;

    public FindingValue? ValueOf(Place place, Finding finding) =>
        examination.ValueAt(InstanceAt(place), examination.Network.Slots[finding]);
}
