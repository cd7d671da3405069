using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Reference;

/// <summary>
/// The semantics, slow and obvious, for tests: it walks every condition for every subject and keeps nothing but the
/// topics that were answered.
/// </summary>
public static class ReferenceInterpreter
{
    public static Outcome Decide(Pack pack, Study study)
    {
        var rules = pack.Rules.Where(pack.IsInForce).OrderBy(r => r.Id, StringComparer.Ordinal).ToList();
        var now = new Examination(study.Subjects, study.Facts);
        var earlier = study.Earlier is { } subjects ? new Examination(subjects, study.EarlierFacts) : null;
        var present = Presence.Of(study);
        var answers = new Answers(rules, present);
        var truths = new ConditionTruth(new Whereabouts(now, earlier), answers);
        answers.Fill([.. pack.Symbols.Topics.Values], truths);

        return new Outcome(
            [.. rules
                .SelectMany(rule => present.SubjectsOf(rule.Scope, rule.IsPerStructure).Select(s => Of(rule, s)))
                .OrderBy(o => o.Subject)],
            [.. pack.Symbols.Topics.Values
                .OrderBy(t => t.Name, StringComparer.Ordinal)
                .SelectMany(t => present.SubjectsOf(t.Scope, t.IsPerStructure).Select(s => answers.At(t, s)!))
                .OrderBy(o => o.Subject)]);

        RuleOutcome Of(Rule rule, Subject subject) => new(
            rule, subject, truths.Of(rule.Condition, subject), truths.OfWidened(rule.Condition, subject),
            answers.StandingOf(rule, subject, truths));
    }
}
