using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Language.Binding;

/// <summary>What can be named of the structures of a scope, or of the study.</summary>
internal static class ScopeNames
{
    public static IEnumerable<Target> Find(Symbols symbols, Scope scope, string name)
    {
        if (scope.Find(symbols.Vocabulary, name) is { } finding) yield return new FindingTarget(finding);
        if (symbols.Topics.TryGetValue(name, out var topic) && Covers(topic.Scope, scope)) yield return new TopicTarget(topic);
        if (symbols.DerivedMeasures.TryGetValue(name, out var measure) && Covers(measure.Scope, scope))
            yield return new DerivedTarget(measure);
    }

    public static IEnumerable<Target> WithValue(Symbols symbols, Scope scope, string value) =>
        All(symbols, scope).Where(t => t.Values.Contains(value));

    public static IEnumerable<Target> All(Symbols symbols, Scope scope) =>
        (scope.Kind?.Findings ?? symbols.Vocabulary.StudyFacts).Values.Select(f => (Target)new FindingTarget(f))
            .Concat(symbols.Topics.Values.Where(t => Covers(t.Scope, scope)).Select(t => new TopicTarget(t)))
            .Concat(symbols.DerivedMeasures.Values.Where(m => Covers(m.Scope, scope)).Select(m => new DerivedTarget(m)));

    /// <summary>Everything that the inner scope speaks of the outer one speaks of too.</summary>
    public static bool Covers(Scope outer, Scope inner) =>
        ReferenceEquals(outer, inner)
        || (outer.IsStudy ? inner.IsStudy : !inner.IsStudy && inner.Structures.All(s => outer.Structures.Contains(s)));
}
