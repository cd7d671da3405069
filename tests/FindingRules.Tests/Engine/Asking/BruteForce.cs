using System.Collections.Immutable;
using FindingRules.Engine.Asking;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reference;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Testing.Generators;
using FindingRules.Tests.Explaining;
using Examination = FindingRules.Engine.Evaluating.Examination;

namespace FindingRules.Tests.Engine.Asking;

/// <summary>
/// The objective of ask-next, the slow way: every answer is put into the study, the whole study is evaluated by the
/// reference interpreter, and what could still be said before and after is compared.
/// </summary>
internal sealed class BruteForce(Sample sample, Examination examination)
{
    private readonly Outcome _before = ReferenceInterpreter.Decide(sample.Pack, sample.Study);

    public IEnumerable<(string, string)> Order(IEnumerable<MissingFinding> asked) => asked
        .Select(m => (Missing: m, Worth: Worth(m)))
        .OrderByDescending(m => m.Worth, Comparer<ImmutableArray<Rational>>.Create(Compare))
        .ThenByDescending(m => m.Missing.Settles.Length)
        .ThenBy(m => m.Missing.Subject, StringComparer.Ordinal).ThenBy(m => m.Missing.Finding, StringComparer.Ordinal)
        .Select(m => (m.Missing.Subject, m.Missing.Finding));

    public ImmutableArray<Rational> Worth(MissingFinding missing)
    {
        var index = Enumerable.Range(0, examination.Count).First(i => examination[i].IsPresent && examination[i].Subject.Key == missing.Subject);
        var subject = examination[index].Subject;
        var finding = (subject.Structure?.Kind.Findings ?? sample.Pack.Vocabulary.StudyFacts)[missing.Finding];
        var answers = new Questioner(new Decided(examination, sample.Study)).AnswersOf(index, finding);
        var open = Consequences().Where(c => StateOf(c, _before) == Truth.Unknown && !IsDone(c)).ToList();
        var settled = new Rational[7];
        foreach (var answer in answers)
        {
            var after = ReferenceInterpreter.Decide(sample.Pack, Applied.To(sample.Study, subject, false, finding, answer.Value));
            foreach (var consequence in open.Where(c => StateOf(c, after) != Truth.Unknown))
                settled[Sort(consequence)] += new Rational(1, answers.Length);
        }
        return [.. settled];
    }

    private sealed record Consequence(Subject Subject, object What, TopicValue? Value);

    private IEnumerable<Consequence> Consequences() =>
        _before.Topics.SelectMany(t => t.Topic.Values.Where(v => v.Says is not null).Select(v => new Consequence(t.Subject, t.Topic, v)))
            .Concat(_before.Rules.SelectMany(r => r.Rule.Conclusions.Select(What).OfType<object>().Select(w => new Consequence(r.Subject, w, null))))
            .Distinct();

    private static object? What(Conclusion conclusion) => conclusion switch
    {
        NextStepConclusion next => next.Step,
        EvaluateConclusion evaluate => evaluate.Step,
        CautionConclusion caution => caution.Caution,
        _ => null,
    };

    private static int Sort(Consequence consequence) => consequence.What switch
    {
        NextStep step => 2 - (int)step.Urgency,
        EvaluateStep step => 2 - (int)step.Urgency,
        Topic => 3 + (int)consequence.Value!.Certainty,
        _ => 6,
    };

    private static Truth StateOf(Consequence consequence, Outcome outcome)
    {
        var rules = outcome.Rules.Where(r => r.Subject == consequence.Subject).ToList();
        if (consequence.What is Topic topic) return StateOf(topic, consequence.Value!, consequence.Subject, outcome);
        var giving = rules.Where(r => r.Rule.Conclusions.Any(c => What(c) == consequence.What));
        return giving.Select(r => consequence.What is Caution ? r.Truth : Emitted(r, outcome)).Aggregate(Truth.False, Kleene.Or);
    }

    private static Truth Emitted(RuleOutcome rule, Outcome outcome)
    {
        var published = rule.Rule.Topics.Select(t => StateOf(t.Topic, t.Value, rule.Subject, outcome)).Aggregate(Truth.True, Kleene.And);
        return rule.Standing switch
        {
            Standing.Stands => published,
            Standing.Unknown or Standing.Open => Kleene.And(Truth.Unknown, published),
            _ => Truth.False,
        };
    }

    private static Truth StateOf(Topic topic, TopicValue value, Subject subject, Outcome outcome)
    {
        var answer = outcome.Topics.Single(t => t.Topic == topic && t.Subject == subject);
        if (answer.Status == TopicStatus.Published) return Kleene.Of(answer.Value == value.Name);
        var isPossible = outcome.Rules.Any(r => r.Subject == subject && r.Standing is Standing.Unknown or Standing.Open or Standing.Stands
            && r.Subject == subject && r.Rule.Topics.Any(t => t.Topic == topic && t.Value == value));
        return answer.Status == TopicStatus.Open && isPossible ? Truth.Unknown : Truth.False;
    }

    private bool IsDone(Consequence consequence)
    {
        if (consequence.What is not EvaluateStep step) return false;
        var index = Enumerable.Range(0, examination.Count).First(i => examination[i].IsPresent && examination[i].Subject == consequence.Subject);
        return DoneSteps.IsDone(examination, step, index);
    }

    private static int Compare(ImmutableArray<Rational> left, ImmutableArray<Rational> right) =>
        left.Zip(right, (l, r) => l.CompareTo(r)).FirstOrDefault(c => c != 0);
}
