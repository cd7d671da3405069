using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;

namespace FindingRules.Engine.Reference;

/// <summary>The topics whose answer a condition asks for.</summary>
internal static class TestedTopics
{
    public static IEnumerable<Topic> Of(Condition condition) => condition switch
    {
        AllOf all => all.Parts.SelectMany(Of),
        AnyOf any => any.Parts.SelectMany(Of),
        Negation not => Of(not.Part),
        Quantified quantified => Of(quantified.Where),
        TopicStatement statement => [statement.Topic],
        _ => [],
    };
}
