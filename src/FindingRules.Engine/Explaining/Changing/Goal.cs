using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Explaining.Changing;

/// <summary>What a change is to bring about.</summary>
internal abstract class Goal
{
    /// <summary>
    /// True: it is so. False: it is not, and would not be whatever became of findings that are unknown now. Unknown: not
    /// so, but it may become so.
    /// </summary>
    public abstract Truth Of(Examination examination);

    /// <summary>Adds everything that the outcome can depend on.</summary>
    public abstract void Reach(Reach reach, Examination examination);
}

/// <summary>A rule stands at a subject, and its topics are published with its values.</summary>
internal sealed class RuleStands(Rule rule, Subject subject) : Goal
{
    public override Truth Of(Examination examination)
    {
        if (RuleOf(examination) is not { } at) return Truth.Unknown;
        switch (at.State.Standing)
        {
            case Standing.False or Standing.Yields: return Truth.False;
            case Standing.Unknown or Standing.Open: return WorstOf(at) == Truth.False ? Truth.False : Truth.Unknown;
            default: return WorstOf(at);
        }
    }

    public override void Reach(Reach reach, Examination examination)
    {
        if (RuleOf(examination) is { } at) reach.AddWithAnswers(at);
    }

    private RuleAt? RuleOf(Examination examination)
    {
        var index = Trials.Find(examination, subject);
        if (index < 0 || !examination[index].IsPresent) return null;
        var rules = examination[index].Plan.Rules;
        for (var i = 0; i < rules.Length; i++)
            if (rules[i].Rule == rule)
                return new RuleAt(examination, index, i);
        return null;
    }

    private static Truth WorstOf(RuleAt at)
    {
        var worst = Truth.True;
        foreach (var given in at.Rule.Topics)
        {
            var state = at.StateOf(given.Topic);
            worst = Kleene.And(worst, state.Status switch
            {
                TopicStatus.Published => Kleene.Of(given.Topic.Values[state.Value] == given.Value),
                TopicStatus.Open => Truth.Unknown,
                _ => Truth.False,
            });
        }
        return worst;
    }
}

/// <summary>A topic is not published with a value any more.</summary>
internal sealed class AnswerGone(Topic topic, string value, Subject subject) : Goal
{
    public override Truth Of(Examination examination)
    {
        var index = Trials.Find(examination, subject);
        if (index < 0) return Truth.True;
        var position = Position(examination, index);
        return examination[index].Topics[position] is { Status: TopicStatus.Published } state && topic.Values[state.Value].Name == value
            ? Truth.False
            : Truth.True;
    }

    public override void Reach(Reach reach, Examination examination) => reach.Add(Trials.Find(examination, subject), topic);

    private int Position(Examination examination, int index)
    {
        var topics = examination[index].Plan.Topics;
        for (var i = 0; i < topics.Length; i++)
            if (topics[i].Topic == topic)
                return i;
        throw new System.Diagnostics.UnreachableException();
    }
}

/// <summary>No rule proposes a step any more for the subjects that it was proposed for.</summary>
internal sealed class StepGone(ImmutableArray<(Rule Rule, Subject Subject)> by) : Goal
{
    private readonly ImmutableArray<RuleStands> _rules = [.. by.Select(b => new RuleStands(b.Rule, b.Subject))];

    public override Truth Of(Examination examination) => Kleene.Of(_rules.All(r => r.Of(examination) != Truth.True));

    public override void Reach(Reach reach, Examination examination)
    {
        foreach (var rule in _rules) rule.Reach(reach, examination);
    }
}
