using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using Source = FindingRules.Model.Packs.Reference;

namespace FindingRules.Engine.Reporting;

/// <summary>Next steps of the rules that stand, open ones first, the urgent before the routine; the same step once.</summary>
internal sealed class StepWriter(Decided decided)
{
    private readonly WordingFiller _filler = new(decided.Examination);

    private Examination Examination => decided.Examination;

    public ImmutableArray<SuggestedStep> Write()
    {
        var proposals =
            from rule in decided.Rules
            where rule.State.Standing == Standing.Stands && rule.IsPublished
            from conclusion in rule.Rule.Conclusions
            let proposal = Propose(rule, conclusion)
            where proposal is not null
            select (rule, proposal);
        return
        [
            .. proposals.GroupBy(p => (p.proposal.Step, p.proposal.Text))
                .Select(group => Merge(group.First().proposal, [.. group.Select(p => p.rule)]))
                .OrderBy(s => s.step.IsDone).ThenByDescending(s => s.urgency).Select(s => s.step),
        ];
    }

    private sealed record Proposal(
        string Step, string Text, Urgency Urgency, bool IsDone, ImmutableArray<string> Found, ImmutableArray<Source> Sources);

    private Proposal? Propose(RuleAt rule, Conclusion conclusion) => conclusion switch
    {
        NextStepConclusion { Step: var step } => new Proposal(
            step.Name, _filler.Fill(step.Says, rule.Index), step.Urgency, DoneSteps.IsDone(Examination, step), [], step.Sources),
        EvaluateConclusion { Step: var step } => Evaluate(rule, step),
        _ => null,
    };

    private Proposal Evaluate(RuleAt rule, EvaluateStep step)
    {
        var target = DoneSteps.Target(Examination, step, rule.Index);
        var isDone = DoneSteps.IsDone(Examination, step, rule.Index);
        return new Proposal(
            $"evaluate {Examination[target].Subject.Key}", _filler.Fill(step.Says, target), step.Urgency, isDone,
            isDone ? Found(target, step) : [], []);
    }

    /// <summary>What was found there: its answered topics, or else the findings that complete the look.</summary>
    private ImmutableArray<string> Found(int whole, EvaluateStep step)
    {
        var answers = ImmutableArray.CreateBuilder<string>();
        for (var i = whole; i <= whole + Examination[whole].LesionCount; i++)
        {
            var instance = Examination[i];
            for (var t = 0; t < instance.Topics.Length; t++)
                if (instance.Topics[t] is { IsDecided: true, Status: TopicStatus.Published } state)
                    answers.Add($"{instance.Plan.Topics[t].Topic.Title}: {instance.Plan.Topics[t].Topic.Values[state.Value].Title}");
        }
        if (answers.Count == 0)
            answers.AddRange(step.CompletedBy.Select(
                f => $"{f.Title}: {string.Join(", ", DoneSteps.Sent(Examination, whole, f).Distinct())}"));
        return [.. answers.Distinct()];
    }

    private static (SuggestedStep step, Urgency urgency) Merge(Proposal proposal, ImmutableArray<RuleAt> rules) => (
        new SuggestedStep(
            proposal.Step, proposal.Text, proposal.Urgency.ToString().ToLowerInvariant(), proposal.IsDone, proposal.Found,
            [.. rules.Select(r => r.Instance.Subject.Key).Distinct()],
            [.. rules.Select(r => r.Reference).Distinct().OrderBy(r => r.Id, StringComparer.Ordinal)],
            EvidenceWriter.Of(rules), SourceNotes.Of(rules.SelectMany(r => r.Rule.Sources).Concat(proposal.Sources))),
        proposal.Urgency);
}
