using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;

namespace FindingRules.Engine.Reporting;

/// <summary>
/// Comparisons that the precision of measuring leaves without an amount, for a divisor may be zero within it: they are near
/// nothing, however far from their limit they are.
/// </summary>
internal static class LostAmounts
{
    public static bool IsLost(Examination examination, StatementNode leaf, int instance)
    {
        foreach (var chosen in leaf.Choices(examination, instance))
            if (IsLost(examination, leaf, chosen))
                return true;
        return false;
    }

    public static bool IsLost(Examination examination, StatementNode leaf, int[] chosen) => leaf switch
    {
        ComparisonNode compared => IsLost(examination, compared.Left, chosen) || IsLost(examination, compared.Right, chosen),
        BetweenNode between => IsLost(examination, between.Value, chosen) || IsLost(examination, between.Low, chosen)
            || IsLost(examination, between.High, chosen),
        _ => false,
    };

    private static bool IsLost(Examination examination, Amount amount, int[] chosen) =>
        amount.Of(examination, chosen, isWidened: true) is null && amount.Of(examination, chosen, isWidened: false) is not null;
}
