using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;

namespace FindingRules.Engine.Compiling;

/// <summary>
/// The findings of the rule's own subject without any of which its condition is unknown: where none of them was sent,
/// nothing needs to be worked out. Null where the condition also speaks of something else.
/// </summary>
internal static class OwnSlots
{
    public static ImmutableArray<int>? Of(Rule rule, FindingSlots slots)
    {
        var own = rule.Scope.IsStudy ? Place.Study : Place.Own;
        var found = new SortedSet<int>();
        return Collect(rule.Condition) ? [.. found] : null;

        bool Collect(Condition part) => part switch
        {
            AllOf all => all.Parts.All(Collect),
            AnyOf any => any.Parts.All(Collect),
            Negation negation => Collect(negation.Part),
            ValueStatement s => Add(s.Place, slots[s.Finding]),
            SignStatement s => Add(s.Place, slots[s.Finding]),
            ExtentStatement s => Add(s.Place, slots[s.Finding]),
            ComparisonStatement s => Measures([s.Left, s.Right]),
            BetweenStatement s => Measures([s.Value, s.Low, s.High]),
            _ => false,
        };

        // A comparison of nothing but numbers is decided without any finding.
        bool Measures(ReadOnlySpan<QuantityExpression> amounts)
        {
            var places = new List<(Place Place, int Slot)>();
            foreach (var amount in amounts) Walk(amount, places);
            return places.Count > 0 && places.All(p => Add(p.Place, p.Slot));
        }

        void Walk(QuantityExpression amount, List<(Place Place, int Slot)> measures)
        {
            switch (amount)
            {
                case MeasureExpression m:
                    measures.Add((m.Place, slots[m.Finding]));
                    break;
                case DerivedExpression d when d.Place == own:
                    Walk(d.Measure.Is, measures);
                    break;
                case DerivedExpression d:
                    measures.Add((d.Place, -1));
                    break;
                case ArithmeticExpression a:
                    Walk(a.Left, measures);
                    Walk(a.Right, measures);
                    break;
            }
        }

        bool Add(Place place, int slot)
        {
            if (place != own) return false;
            found.Add(slot);
            return true;
        }
    }
}
