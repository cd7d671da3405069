using System.Collections.Immutable;
using FindingRules.Engine.Asking;
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

    /// <summary>Adds what brings it about most directly; nothing where that is not to be told apart.</summary>
    public virtual void Core(Reach reach, Examination examination)
    {
    }

    /// <summary>Sets of findings of each of which every way changes one.</summary>
    public virtual ImmutableArray<ImmutableHashSet<FindingSlot>> Musts(Examination examination, Study study) => [];

    protected static int PositionOf(Instance instance, Topic topic)
    {
        var topics = instance.Plan.Topics;
        for (var i = 0; i < topics.Length; i++)
            if (topics[i].Topic == topic)
                return i;
        throw new System.Diagnostics.UnreachableException();
    }
}

/// <summary>A rule stands at a subject, and its topics are published with its values.</summary>
internal sealed class RuleStands(Rule rule, Subject subject) : Goal
{
    public override Truth Of(Examination examination) =>
        RuleOf(examination) is { } at ? Emission.Of(at.Instance, at.Position) : Truth.Unknown;

    public override void Reach(Reach reach, Examination examination)
    {
        if (RuleOf(examination) is { } at) reach.AddWithAnswers(at);
    }

    public override ImmutableArray<ImmutableHashSet<FindingSlot>> Musts(Examination examination, Study study) =>
        RuleOf(examination) is { } at ? Changing.Musts.Of(at, ChangeSpace.Normals(study)) : [];

    /// <summary>Of the condition alone, whatever goes before it.</summary>
    public Truth TruthIn(Examination examination) => RuleOf(examination)?.State.Truth ?? Truth.False;

    public void ReachCondition(Reach reach, Examination examination)
    {
        if (RuleOf(examination) is { } at) reach.Add(at.Rule.Condition, at.Entry.Condition, at.Index);
    }

    public override void Core(Reach reach, Examination examination)
    {
        if (RuleOf(examination) is { } at) reach.AddCore(at);
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
}

/// <summary>A topic is not published with a value any more.</summary>
internal sealed class AnswerGone(Topic topic, string value, Subject subject) : Goal
{
    public override Truth Of(Examination examination)
    {
        var index = Trials.Find(examination, subject);
        if (index < 0) return Truth.True;
        var position = PositionOf(examination[index], topic);
        return examination[index].TopicAt(position) is { Status: TopicStatus.Published } state && topic.Values[state.Value].Name == value
            ? Truth.False
            : Truth.True;
    }

    public override void Reach(Reach reach, Examination examination) => reach.Add(Trials.Find(examination, subject), topic);
}

/// <summary>A topic is not withheld, or not contradictory, any more.</summary>
internal sealed class AnswerFreed(Topic topic, Subject subject) : Goal
{
    public override Truth Of(Examination examination)
    {
        var index = Trials.Find(examination, subject);
        if (index < 0) return Truth.True;
        var status = examination[index].TopicAt(PositionOf(examination[index], topic)).Status;
        return Kleene.Of(status is not (TopicStatus.Held or TopicStatus.Conflict));
    }

    public override void Reach(Reach reach, Examination examination) => reach.Add(Trials.Find(examination, subject), topic);
}

/// <summary>No rule gives a caution any more for the subjects that it was given for.</summary>
internal sealed class WarningGone(ImmutableArray<(Rule Rule, Subject Subject)> by) : Goal
{
    private readonly ImmutableArray<RuleStands> _rules = [.. by.Select(b => new RuleStands(b.Rule, b.Subject))];

    public override Truth Of(Examination examination) => Kleene.Of(_rules.All(r => r.TruthIn(examination) != Truth.True));

    public override void Reach(Reach reach, Examination examination)
    {
        foreach (var rule in _rules) rule.ReachCondition(reach, examination);
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
