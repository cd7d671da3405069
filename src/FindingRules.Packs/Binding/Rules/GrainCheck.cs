using System.Collections.Immutable;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Rules;

/// <summary>Whether a rule answers for a structure or for each lesion; it cannot do both.</summary>
internal static class GrainCheck
{
    public static bool IsPerStructure(ScalarNode id, ImmutableArray<Conclusion> conclusions, Fields fields)
    {
        Topic? perStructure = null;
        Topic? perLesion = null;
        foreach (var conclusion in conclusions)
        {
            var topic = conclusion switch
            {
                TopicConclusion answer => answer.Topic,
                HoldConclusion hold => hold.Topic,
                _ => null,
            };
            if (topic is null) continue;
            if (topic.IsPerStructure) perStructure ??= topic;
            else perLesion ??= topic;
        }
        if (perStructure is not null && perLesion is not null)
            fields.Report(LinkMessages.MixedGrain(fields.Text("rule")!.Location, id.Value, perStructure.Name, perLesion.Name));
        return perStructure is not null;
    }
}
