using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Compiling.Nodes;

/// <summary>A derived measure on its own, for wording: true where it has a value.</summary>
internal sealed class AmountNode(int id, ImmutableArray<Place> places, Amount amount) : StatementNode(id, amount.UsesPrecision, places)
{
    public override Truth Test(Examination examination, ReadOnlySpan<int> chosen, bool isWidened) =>
        amount.Of(examination, chosen, isWidened) is null ? Truth.Unknown : Truth.True;

    /// <summary>Its value at the instance; null where there is none, or more than one.</summary>
    public Interval? ValueAt(Examination examination, int instance)
    {
        Interval? only = null;
        foreach (var chosen in Choices(examination, instance))
        {
            if (amount.Of(examination, chosen, isWidened: false) is not { } value) continue;
            if (only is { } other && other != value) return null;
            only = value;
        }
        return only;
    }
}
