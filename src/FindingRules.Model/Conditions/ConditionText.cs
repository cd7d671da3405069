using FindingRules.Model.Packs;

namespace FindingRules.Model.Conditions;

/// <summary>
/// Conditions as text. Canonical text has the same form for the same meaning, whatever the layout, order or units it
/// was written with: revisions and digests are hashes of it. Words are the condition as an author would write it.
/// </summary>
public static class ConditionText
{
    public static string Canonical(Condition condition) => CanonicalCondition.Of(condition);

    public static string Canonical(QuantityExpression expression) => CanonicalQuantity.Of(expression);

    public static string Canonical(IEnumerable<Conclusion> conclusions) =>
        string.Join("; ", conclusions.Select(Canonical).Order(StringComparer.Ordinal));

    /// <summary>Reading it again in the same scope gives the same canonical text.</summary>
    public static string Words(Condition condition) => ConditionWords.Of(condition);

    public static string Words(QuantityExpression expression) => QuantityWords.Of(expression);

    private static string Canonical(Conclusion conclusion) => conclusion switch
    {
        TopicConclusion topic => $"{topic.Topic.Name} {topic.Value.Name}",
        EvaluateConclusion evaluate => $"evaluate {evaluate.Step.Structure.Name}",
        NextStepConclusion next => $"{next.Step.Name} next",
        CautionConclusion caution => $"caution {caution.Caution.Name}",
        ProbabilityConclusion probability =>
            $"probability from {Canonical(probability.Before)} after "
            + $"{(probability.IsPositive ? "positive" : "negative")} {probability.Reference.Name}",
        HoldConclusion hold => $"hold {hold.Topic.Name}",
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
