using System.Collections.Immutable;
using FindingRules.Model.Readings;

namespace FindingRules.Engine.Reporting;

/// <summary>What several rules that say the same rest on together.</summary>
internal static class Grounds
{
    public static ImmutableArray<string> Subjects(List<RuleAt> rules)
    {
        if (rules.Count == 1) return [rules[0].Instance.Subject.Key];
        var subjects = new Once<string>();
        foreach (var rule in rules) subjects.Add(rule.Instance.Subject.Key);
        return subjects.ToImmutable();
    }

    /// <summary>By id, each once.</summary>
    public static ImmutableArray<RuleReference> References(List<RuleAt> rules)
    {
        if (rules.Count == 1) return [rules[0].Reference];
        var references = new Once<RuleReference>();
        foreach (var rule in rules) references.Add(rule.Reference);
        return references.Sorted(static (a, b) => string.CompareOrdinal(a.Id, b.Id));
    }
}
