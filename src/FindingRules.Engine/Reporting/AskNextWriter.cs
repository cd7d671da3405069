using System.Collections.Immutable;
using FindingRules.Engine.Asking;
using FindingRules.Model.Readings;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>
/// The missing findings of the subjects present, those first whose answers settle the weightiest consequences (see
/// <see cref="Worth"/>); among equals those for which most undecided rules wait, then by subject and name.
/// </summary>
internal static class AskNextWriter
{
    public static ImmutableArray<MissingFinding> Write(Decided decided, ImmutableArray<UndecidedRule> undecided) =>
        [.. Weigh(decided, undecided).Select(q => q.Missing)];

    public static IEnumerable<Weighed> Weigh(Decided decided, ImmutableArray<UndecidedRule> undecided)
    {
        var asked = Asked(decided, undecided);
        if (asked.Count == 0) return [];
        var questioner = new Questioner(decided);
        return asked.Select(a => new Weighed(a.Missing, a.Index, a.Finding, questioner.WorthOf(a.Index, a.Finding)))
            .OrderByDescending(w => w.Worth)
            .ThenByDescending(w => w.Missing.Settles.Length)
            .ThenBy(w => w.Missing.Subject, StringComparer.Ordinal).ThenBy(w => w.Missing.Finding, StringComparer.Ordinal);
    }

    private static List<(MissingFinding Missing, int Index, Finding Finding)> Asked(
        Decided decided, ImmutableArray<UndecidedRule> undecided)
    {
        var present = decided.Instances.ToDictionary(i => decided.Examination[i].Subject.Key, i => i, StringComparer.Ordinal);
        var facts = decided.Examination.Network.Pack.Vocabulary.StudyFacts;
        return
        [
            .. from rule in undecided
               from key in rule.Missing
               where present.ContainsKey(key.Subject)
               group rule.Rule.Id by key into rules
               let index = present[rules.Key.Subject]
               let subject = decided.Examination[index].Subject
               let finding = (subject.Structure?.Kind.Findings ?? facts).GetValueOrDefault(rules.Key.Finding)
               where finding is not null
               select (
                   new MissingFinding(
                       rules.Key.Subject, rules.Key.Finding, $"{subject.Title}: {finding.Title}",
                       [.. rules.Distinct().Order(StringComparer.Ordinal)]),
                   index, finding),
        ];
    }
}

/// <summary>A missing finding and what hangs on it.</summary>
internal sealed record Weighed(MissingFinding Missing, int Index, Finding Finding, Worth Worth);
