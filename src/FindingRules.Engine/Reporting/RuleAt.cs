using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;

namespace FindingRules.Engine.Reporting;

/// <summary>One rule at one instance of an examination that has been decided.</summary>
internal readonly record struct RuleAt(Examination Examination, int Index, int Position)
{
    public Instance Instance => Examination[Index];

    public RuleEntry Entry => Instance.Plan.Rules[Position];

    public Rule Rule => Entry.Rule;

    public RuleState State => Instance.StateOf(Position);

    public RuleReference Reference => Examination.Network.Words.Of(Rule).Reference;

    /// <summary>True in force, but outside of what is settled: its width within the measurements' precision.</summary>
    public bool IsBorderline => State is var state && state.Widened != state.Truth;

    /// <summary>What follows, in the words of the language.</summary>
    public string WouldConclude => Examination.Network.Words.Of(Rule).WouldConclude;

    /// <summary>Whether each topic that it concludes was published with its value.</summary>
    public bool IsPublished
    {
        get
        {
            foreach (var conclusion in Rule.Conclusions)
            {
                if (conclusion is TopicConclusion given && !Publishes(given)) return false;
            }
            return true;
        }
    }

    /// <summary>Whether the topic has this value, by whatever rule.</summary>
    public bool Publishes(TopicConclusion given) =>
        StateOf(given.Topic) is { Status: TopicStatus.Published } state && given.Topic.Values[state.Value] == given.Value;

    public TopicState StateOf(Topic topic)
    {
        for (var i = 0; i < Instance.Plan.Topics.Length; i++)
            if (Instance.Plan.Topics[i].Topic == topic)
                return Instance.TopicAt(i);
        return default;
    }
}

/// <summary>One topic at one instance of an examination that has been decided.</summary>
/// <param name="Position">In the plan.</param>
internal readonly record struct TopicAt(Examination Examination, int Index, int Position, TopicState State)
{
    public TopicEntry Entry => Examination[Index].Plan.Topics[Position];

    public string Subject => Examination[Index].Subject.Key;

    /// <summary>The rules that stand and give its value.</summary>
    public List<RuleAt> Givers()
    {
        var rules = new List<RuleAt>();
        foreach (var (position, value) in Entry.Givers)
        {
            if (value != State.Value) continue;
            var rule = new RuleAt(Examination, Index, position);
            if (rule.State.Standing == Standing.Stands && !rules.Contains(rule)) rules.Add(rule);
        }
        return rules;
    }
}
