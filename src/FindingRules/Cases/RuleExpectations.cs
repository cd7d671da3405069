using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Truths;

namespace FindingRules.Cases;

/// <summary>What a case says of single rules: fires, silent, unknown, yields.</summary>
internal sealed class RuleExpectations(Case @case, Outcome outcome)
{
    private readonly ILookup<string, RuleOutcome> _byRule = outcome.Rules.ToLookup(r => r.Rule.Id, StringComparer.Ordinal);

    public IEnumerable<Message> Check() =>
    [
        .. CheckSome(@case.Expect.Fires, "fire", r => r.Standing == Standing.Stands),
        .. CheckSilent(),
        .. CheckSome(@case.Expect.Unknown, "be unknown", r => r.Standing is Standing.Unknown or Standing.Open),
        .. CheckSome(@case.Expect.Yields, "yield", r => r.Truth == Truth.True && r.Standing == Standing.Yields),
    ];

    private IEnumerable<Message> CheckSome(ImmutableArray<Expected> rules, string should, Func<RuleOutcome, bool> isSo)
    {
        if (rules.IsDefault) yield break;
        foreach (var rule in rules)
            if (!_byRule[rule.Text].Any(isSo))
                yield return CaseMessages.RuleCameOtherwise(rule.Location, @case.Id, rule.Text, should, Describe(_byRule[rule.Text]));
    }

    private IEnumerable<Message> CheckSilent()
    {
        if (@case.Expect.Silent.IsDefault) yield break;
        foreach (var rule in @case.Expect.Silent)
            if (_byRule[rule.Text].Where(r => r.Truth != Truth.False).ToArray() is { Length: > 0 } loud)
                yield return CaseMessages.RuleCameOtherwise(rule.Location, @case.Id, rule.Text, "be silent", Describe(loud));
    }

    private static string Describe(IEnumerable<RuleOutcome> outcomes)
    {
        var groups = outcomes.GroupBy(Word).Select(g => $"it {g.Key} {string.Join(", ", g.Select(r => r.Subject.Key).Take(3))}");
        var text = string.Join(", ", groups);
        return text.Length == 0 ? "the study has nothing that it speaks of" : text;
    }

    private static string Word(RuleOutcome rule) => rule.Standing switch
    {
        Standing.False => "is false of",
        Standing.Unknown => "is unknown of",
        Standing.Yields when rule.Truth == Truth.True => "yields for",
        Standing.Yields => "is unknown, and would yield, for",
        Standing.Open => "is left open by a rule above it for",
        _ => "fires for",
    };
}
