using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Packs.Digests;

/// <summary>The first 12 hex digits of the SHA-256 of a rule's meaning: layout, wording and order do not change it.</summary>
internal static class RuleRevision
{
    private const int Digits = 12;

    public static string Of(
        string id, Scope scope, Condition condition, ImmutableArray<Conclusion> conclusions, ImmutableArray<string> over,
        bool isPerStructure)
    {
        var canonical = new CanonicalText()
            .Add("rule", id, ScopeText(scope), isPerStructure ? "per structure" : "per lesion")
            .Add("condition", ConditionText.Canonical(condition))
            .Add("conclusions", ConditionText.Canonical(conclusions))
            .Add("over", over.Order(StringComparer.Ordinal));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(canonical.ToString())))[..Digits];
    }

    /// <summary>The structures, not the words: another structure of the kind is another meaning.</summary>
    public static string ScopeText(Scope scope) =>
        scope.IsStudy ? "study" : $"each {string.Join(' ', scope.Structures.Select(s => s.Name).Order(StringComparer.Ordinal))}";
}
