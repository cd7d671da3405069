using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Truths;

namespace FindingRules.Tests.Vectors;

/// <summary>Operations of ranges as our intervals have them, dense.</summary>
internal static class VectorRange
{
    /// <summary>Null where our intervals have no such operation.</summary>
    public static Truth? Decide(VectorTerm term) => term switch
    {
        CallTerm { Parts: [NullTerm, _] or [_, NullTerm], Name: "before" or "after" or "includes" or "included in" or "contains" } => Truth.Unknown,
        CallTerm { Name: "before", Parts: [var a, var b] } => IsBefore(Of(a), Of(b)),
        CallTerm { Name: "after", Parts: [var a, var b] } => IsBefore(Of(b), Of(a)),
        CallTerm { Name: "includes" or "contains", Parts: [RangeTerm a, var b] } => Contains(a, b),
        CallTerm { Name: "in" or "included in" or "during", Parts: [var b, RangeTerm a] } => Contains(a, b),
        CallTerm { Name: "overlaps", Parts: [RangeTerm a, RangeTerm b] } => Overlap(Of(a), Of(b)),
        CallTerm { Name: "coincides", Parts: [var a, var b] } => Same(Of(a), Of(b)),
        CompareTerm { Left: RangeTerm a, Comparator: null, Right: RangeTerm b } => Same(Of(a), Of(b)) is { } same ? Kleene.Not(same) : null,
        CompareTerm { Left: RangeTerm a, Comparator: Comparator.Equal, Right: RangeTerm b } => Same(Of(a), Of(b)),
        _ => null,
    };

    public static Interval? Of(VectorTerm term) => term switch
    {
        NumberTerm number => Interval.Point(new Quantity(number.Value, number.Unit).InBase),
        RangeTerm { Low: NumberTerm low, High: NumberTerm high } range when low.Unit.Dimension == high.Unit.Dimension => new Interval(
            new Quantity(low.Value, low.Unit).InBase, range.LowClosed, new Quantity(high.Value, high.Unit).InBase, range.HighClosed),
        _ => null,
    };

    // All of one before all of the other; where that is not so, comparing what lies in them may as well be unknown.
    private static Truth? IsBefore(Interval? a, Interval? b) => a is null || b is null ? null : Kleene.Of(a.Value.Below(b.Value) == Truth.True);

    private static Truth? Contains(RangeTerm outer, VectorTerm inner) => (Of(outer), Of(inner), inner) switch
    {
        ({ } range, { Low: { } value }, NumberTerm) => Kleene.Of(range.Contains(value)),
        ({ } range, { } other, _) => Kleene.Of(range.Contains(other)),
        _ => null,
    };

    private static Truth? Overlap(Interval? a, Interval? b) => a is null || b is null ? null : Kleene.Of(!a.Value.Intersect(b.Value).IsEmpty);

    private static Truth? Same(Interval? a, Interval? b) => a is null || b is null ? null : Kleene.Of(a.Value == b.Value);
}
