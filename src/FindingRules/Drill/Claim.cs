using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;

namespace FindingRules.Drill;

/// <summary>What an option says, so that the engine can tell whether it is right.</summary>
/// <param name="By">The rules behind it: those that make it right, or the one that nearly did.</param>
internal abstract record Claim(ImmutableArray<(Rule Rule, Subject Subject)> By)
{
    public abstract bool IsRight(Outcome outcome, Reading reading);
}

/// <summary>The topic of the subject has this value.</summary>
internal sealed record Say(Topic Topic, TopicValue Value, Subject Subject, ImmutableArray<(Rule, Subject)> By) : Claim(By)
{
    public override bool IsRight(Outcome outcome, Reading reading) => outcome.Topics.Any(t =>
        t.Topic == Topic && t.Subject == Subject && t.Status == TopicStatus.Published && t.Value == Value.Name);
}

/// <summary>The topic cannot be answered yet: it is withheld, or something unknown could still decide it.</summary>
internal sealed record NotYet(Topic Topic, Subject Subject, ImmutableArray<(Rule, Subject)> By) : Claim(By)
{
    public override bool IsRight(Outcome outcome, Reading reading) => outcome.Topics.Any(t =>
        t.Topic == Topic && t.Subject == Subject && t.Status is TopicStatus.Held or TopicStatus.Open);
}

/// <summary>The rules ask for this step, and it is still to be done.</summary>
internal sealed record TakeStep(string Step, ImmutableArray<(Rule, Subject)> By) : Claim(By)
{
    public override bool IsRight(Outcome outcome, Reading reading) => reading.NextSteps.Any(s => !s.IsDone && s.Step == Step);
}

/// <summary>Of all that is missing, this finding would settle most.</summary>
internal sealed record LookAt(Subject Subject, string Finding, ImmutableArray<(Rule, Subject)> By) : Claim(By)
{
    public override bool IsRight(Outcome outcome, Reading reading) =>
        reading.AskNext is [var first, ..] && first.Subject == Subject.Key && first.Finding == Finding;
}
