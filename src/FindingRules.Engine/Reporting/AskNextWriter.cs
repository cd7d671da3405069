using System.Collections.Immutable;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Reporting;

/// <summary>
/// The missing findings of the subjects present, those first for which most undecided rules wait. Objective: the count
/// of distinct undecided rules that name the finding among what would settle them.
/// </summary>
internal static class AskNextWriter
{
    public static ImmutableArray<MissingFinding> Write(Decided decided, ImmutableArray<UndecidedRule> undecided)
    {
        var present = decided.Instances.Select(i => decided.Examination[i].Subject).ToDictionary(s => s.Key, StringComparer.Ordinal);
        var asked =
            from rule in undecided
            from key in rule.Missing
            where present.ContainsKey(key.Subject)
            group rule.Rule.Id by key into rules
            select (Key: rules.Key, Rules: rules.Distinct().Order(StringComparer.Ordinal).ToImmutableArray());
        return
        [
            .. asked.OrderByDescending(a => a.Rules.Length)
                .ThenBy(a => a.Key.Subject, StringComparer.Ordinal).ThenBy(a => a.Key.Finding, StringComparer.Ordinal)
                .Select(a => new MissingFinding(
                    a.Key.Subject, a.Key.Finding, Text(present[a.Key.Subject], a.Key.Finding, decided), a.Rules)),
        ];
    }

    private static string Text(Subject subject, string finding, Decided decided)
    {
        var findings = subject.Structure?.Kind.Findings ?? decided.Examination.Network.Pack.Vocabulary.StudyFacts;
        var title = findings.TryGetValue(finding, out var known) ? known.Title : finding.Replace('-', ' ');
        return $"{subject.Title}: {title}";
    }
}
