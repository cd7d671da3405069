using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;

namespace FindingRules.Language.Binding;

/// <summary>What follows from one rule must not follow twice or stand against itself.</summary>
internal sealed class ConclusionCheck(BindingContext context)
{
    public bool Agree(ImmutableArray<Conclusion> conclusions)
    {
        for (var i = 1; i < conclusions.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (Compare(conclusions[j], conclusions[i]) is not { } message) continue;
                context.Report(message);
                return false;
            }
        }
        return true;
    }

    private static Message? Compare(Conclusion before, Conclusion conclusion) => (before, conclusion) switch
    {
        (TopicConclusion one, TopicConclusion other) when one.Topic == other.Topic && one.Value != other.Value =>
            ConclusionNameMessages.TwoValues(other.Location, one.Location, one.Topic.Name, one.Value.Name, other.Value.Name),
        (TopicConclusion one, HoldConclusion other) when one.Topic == other.Topic =>
            ConclusionNameMessages.HoldsAndAnswers(other.Location, one.Location, one.Topic.Name),
        (HoldConclusion one, TopicConclusion other) when one.Topic == other.Topic =>
            ConclusionNameMessages.HoldsAndAnswers(other.Location, one.Location, one.Topic.Name),
        _ when ConditionText.Canonical([before]) == ConditionText.Canonical([conclusion]) =>
            ConclusionNameMessages.SaidTwice(conclusion.Location, before.Location, ConditionText.Canonical([conclusion])),
        _ => null,
    };
}
