using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Packs.Studies;

/// <summary>What a study is read against.</summary>
internal sealed record StudyContext(
    string PackName, Vocabulary Vocabulary, ImmutableSortedDictionary<string, Protocol> Protocols, MessageBag Messages);
