using FindingRules.Model.Conditions;
using FindingRules.Model.Messages;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Language.Binding;

/// <summary>Whose findings the first words of a phrase may speak of.</summary>
/// <param name="Place">As the engine will look it up.</param>
/// <param name="Scope">Where the words behind it are looked up.</param>
/// <param name="Understood">How many words (prefixes left out) it took: none, or one structure or kind.</param>
/// <param name="SayAs">Words before a finding that mean this place and no other.</param>
/// <param name="Problem">Why it may not be said so here.</param>
internal sealed record PlaceCandidate(Place Place, Scope Scope, int Understood, string SayAs, Func<Message>? Problem = null);
