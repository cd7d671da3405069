using FindingRules.Engine.Evaluating;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Asking;

/// <summary>
/// Whether a rule stands and gets its answers through. False means that nothing unknown could still bring it about.
/// </summary>
internal static class Emission
{
    public static Truth Of(Instance instance, int position)
    {
        switch (instance.StateOf(position).Standing)
        {
            case Standing.False or Standing.Yields:
                return Truth.False;
            case Standing.Unknown or Standing.Open:
                return Kleene.And(Truth.Unknown, Published(instance, position));
            default:
                return Published(instance, position);
        }
    }

    private static Truth Published(Instance instance, int position)
    {
        var worst = Truth.True;
        foreach (var answer in instance.Plan.Own.Answers[position])
            if (answer.Value != 0)
                worst = Kleene.And(worst, Of(instance.TopicAt(answer.Topic), answer.Value));
        return worst;
    }

    /// <param name="value">The bit of one value.</param>
    public static Truth Of(TopicState topic, ulong value) => topic.Status switch
    {
        TopicStatus.Published => Kleene.Of(value == 1UL << topic.Value),
        TopicStatus.Open => (topic.Possible & value) == 0 ? Truth.False : Truth.Unknown,
        _ => Truth.False,
    };
}
