using FindingRules.Model.Packs;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Scales;

/// <summary>A scale whose topic and grades are known and whose texts are not yet read.</summary>
internal sealed record PendingScale(
    ScalarNode Name, Fields Fields, Topic Topic, TopicValue[] Values, List<(ScalarNode Name, ScalarNode Range)> Bands);
