using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using Source = FindingRules.Model.Packs.Reference;

namespace FindingRules.Engine.Reporting;

/// <summary>Next steps of the rules that stand, open ones first, the urgent before the routine; the same step once.</summary>
internal sealed class StepWriter(Decided decided)
{
    private readonly List<Proposal> _proposals = [];

    private Examination Examination => decided.Examination;

    public ImmutableArray<SuggestedStep> Write()
    {
        foreach (var rule in decided.Live)
        {
            if (rule.State.Standing != Standing.Stands || !HasStep(rule.Rule) || !rule.IsPublished) continue;
            foreach (var conclusion in rule.Rule.Conclusions) Propose(rule, conclusion);
        }
        var steps = ImmutableArray.CreateBuilder<SuggestedStep>(_proposals.Count);
        foreach (var isDone in (ReadOnlySpan<bool>)[false, true])
            for (var urgency = Urgency.Urgent; urgency >= Urgency.Routine; urgency--)
                foreach (var proposal in _proposals)
                    if (proposal.IsDone == isDone && proposal.Urgency == urgency)
                        steps.Add(Merge(proposal));
        return steps.MoveToImmutable();
    }

    private sealed record Proposal(
        string Step, string Text, Urgency Urgency, bool IsDone, ImmutableArray<string> Found, ImmutableArray<Source> Sources)
    {
        public List<RuleAt> Rules { get; } = [];
    }

    private static bool HasStep(Rule rule)
    {
        foreach (var conclusion in rule.Conclusions)
            if (conclusion is NextStepConclusion or EvaluateConclusion)
                return true;
        return false;
    }

    private void Propose(RuleAt rule, Conclusion conclusion)
    {
        switch (conclusion)
        {
            case NextStepConclusion { Step: var step }:
                var text = decided.Filler.Fill(step.Says, rule.Index);
                var same = Find(step.Name, text)
                    ?? Add(new Proposal(step.Name, text, step.Urgency, DoneSteps.IsDone(Examination, step), [], step.Sources));
                same.Rules.Add(rule);
                break;
            case EvaluateConclusion { Step: var step }:
                Evaluate(rule, step).Rules.Add(rule);
                break;
        }
    }

    private Proposal Evaluate(RuleAt rule, EvaluateStep step)
    {
        var target = DoneSteps.Target(Examination, step, rule.Index);
        var name = $"evaluate {Examination[target].Subject.Key}";
        var text = decided.Filler.Fill(step.Says, target);
        if (Find(name, text) is { } same) return same;
        var isDone = DoneSteps.IsDone(Examination, step, rule.Index);
        return Add(new Proposal(name, text, step.Urgency, isDone, isDone ? Found(target, step) : [], []));
    }

    private Proposal? Find(string step, string text)
    {
        foreach (var proposal in _proposals)
            if (proposal.Step == step && proposal.Text == text)
                return proposal;
        return null;
    }

    private Proposal Add(Proposal proposal)
    {
        _proposals.Add(proposal);
        return proposal;
    }

    /// <summary>What was found there: its answered topics, or else the findings that complete the look.</summary>
    private ImmutableArray<string> Found(int whole, EvaluateStep step)
    {
        var answers = new Once<string>();
        for (var i = whole; i <= whole + Examination[whole].LesionCount; i++)
        {
            var instance = Examination[i];
            if (!instance.IsPresent) continue;
            for (var t = 0; t < instance.Plan.Topics.Length; t++)
                if (instance.TopicAt(t) is { IsDecided: true, Status: TopicStatus.Published } state)
                    answers.Add($"{instance.Plan.Topics[t].Topic.Title}: {instance.Plan.Topics[t].Topic.Values[state.Value].Title}");
        }
        if (answers.Count == 0)
            foreach (var finding in step.CompletedBy)
                answers.Add($"{finding.Title}: {string.Join(", ", DoneSteps.Sent(Examination, whole, finding).Distinct())}");
        return answers.ToImmutable();
    }

    private SuggestedStep Merge(Proposal proposal) => new(
        proposal.Step, proposal.Text, Words.Of(proposal.Urgency), proposal.IsDone, proposal.Found,
        Grounds.Subjects(proposal.Rules), Grounds.References(proposal.Rules), decided.EvidenceOf(proposal.Rules),
        SourceNotes.Of(proposal.Rules, proposal.Sources));
}
