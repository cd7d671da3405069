using System.Diagnostics;
using FindingRules.Model.Conditions;

namespace FindingRules.Packs.Binding.Linking;

/// <summary>The names of the topics that a condition tests.</summary>
internal static class TestedTopics
{
    public static IEnumerable<string> In(Condition condition) => condition switch
    {
        AllOf all => all.Parts.SelectMany(In),
        AnyOf any => any.Parts.SelectMany(In),
        Negation negation => In(negation.Part),
        Quantified quantified => In(quantified.Where),
        TopicStatement topic => [topic.Topic.Name],
        Statement => [],
        _ => throw new UnreachableException(),
    };
}
