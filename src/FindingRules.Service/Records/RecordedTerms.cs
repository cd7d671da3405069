using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Ledger.Records;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;

namespace FindingRules.Service.Records;

/// <summary>
/// What a reading is found and counted by. That a rule fired is taken from the evaluation and not from the reading: a rule that yielded, or
/// whose topic has no wording, stands in no line, and yet a recall must find every reading that rested on it.
/// </summary>
internal static class RecordedTerms
{
    public static IndexTerms Of(DecidedStudy decided) => new()
    {
        Rules = Rules(decided.Reading, decided.Outcome),
        Topics =
        [
            .. decided.Outcome.Topics.Where(t => t is { Status: TopicStatus.Published, Value: not null })
                .Select(t => new TopicTerm(t.Topic.Name, t.Value!)).Distinct(),
        ],
        Subjects = [.. decided.Study.Subjects.Select(s => new Subject(s.Structure, s.Side, null).Key).Distinct()],
        Study = decided.Reading.Study,
        Supersedes = decided.Reading.Supersedes,
    };

    private static ImmutableArray<RuleTerm> Rules(Reading reading, Outcome outcome)
    {
        var terms = new SortedDictionary<string, RuleTerm>(StringComparer.Ordinal);
        foreach (var fired in outcome.Rules.Where(r => r.Truth == Truth.True))
            Add(new RuleReference(fired.Rule.Id, fired.Rule.Revision), RuleOutcomes.Fired);
        foreach (var shown in Shown(reading)) Add(shown, RuleOutcomes.Shown);
        foreach (var unknown in reading.Unknown) Add(unknown.Rule, RuleOutcomes.Unknown, [.. unknown.Missing.Select(m => m.Finding)]);
        foreach (var borderline in reading.Borderline) Add(borderline.Rule, RuleOutcomes.Borderline);
        return [.. terms.Values];

        void Add(RuleReference rule, RuleOutcomes what, params ImmutableArray<string> missing)
        {
            var term = terms.GetValueOrDefault(rule.Id) ?? new RuleTerm(rule.Id, rule.Revision, RuleOutcomes.None, []);
            terms[rule.Id] = term with { Outcomes = term.Outcomes | what, Missing = [.. term.Missing.Union(missing)] };
        }
    }

    private static IEnumerable<RuleReference> Shown(Reading reading) => reading.Suggestions.SelectMany(s => s.Rules)
        .Concat(reading.NextSteps.SelectMany(s => s.Rules))
        .Concat(reading.Cautions.SelectMany(c => c.Rules))
        .Concat(reading.Probabilities.SelectMany(p => p.Rules))
        .Concat(reading.Held.SelectMany(h => h.Rules))
        .Concat(reading.Conflicts.SelectMany(c => c.Values).SelectMany(v => v.Rules));
}
