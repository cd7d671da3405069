using FindingRules.Engine.Evaluating;
using FindingRules.Model.Readings;

namespace FindingRules.Engine.Reporting;

/// <summary>What rules that measuring alone could have made true would have done to the answers that were given.</summary>
internal sealed class NearAnswers(Decided decided, Reading reading)
{
    private List<BorderlineRule>? _near;

    /// <summary>Rules that the precision of measuring alone could make true; what was not sent is asked for elsewhere.</summary>
    public List<BorderlineRule> Near => _near ??= [.. reading.Borderline.Where(b => !b.Applies && NearTruth.IsNear(RuleOf(b)))];

    public RuleAt RuleOf(BorderlineRule near) =>
        decided.Live.First(r => r.Rule.Id == near.Rule.Id && r.Instance.Subject.Key == near.Subject);

    /// <summary>The near rules that would have taken the answer back without giving another to its question.</summary>
    public List<(BorderlineRule Rule, string Instead)> Against(Suggestion suggestion)
    {
        var against = new List<(BorderlineRule, string)>();
        if (Near.Count > 0 && Find(suggestion.Topic, suggestion.Subject) is { } answer)
            foreach (var near in Near)
                if (near.Subject == suggestion.Subject && Instead(answer, RuleOf(near)) is { } instead)
                    against.Add((near, instead));
        return against;
    }

    /// <summary>The borderline topic that every rule behind the answer rests on, or one of them for each.</summary>
    public string? RestsOn(Suggestion suggestion) =>
        Find(suggestion.Topic, suggestion.Subject) is { } answer && Shaken(answer) is { } topic
            ? topic.Subject == suggestion.Subject ? topic.Entry.Topic.Title : $"{topic.Entry.Topic.Title} of the {Title(topic)}"
            : null;

    private static string Title(TopicAt topic) => topic.Examination[topic.Index].Subject.Title;

    private static string? Instead(TopicAt answer, RuleAt near)
    {
        if (answer.Index != near.Index) return null;
        if (answer.Entry.Holders.Contains(near.Position)) return "could be withheld";
        return !near.Rule.Topics.Any(t => t.Topic == answer.Entry.Topic)
            && answer.Givers().TrueForAll(g => g.Entry.Superiors.Contains(near.Position))
                ? "could be left out"
                : null;
    }

    /// <summary>Topics are decided in layers, so this comes to an end.</summary>
    private TopicAt? Shaken(TopicAt answer)
    {
        TopicAt? first = null;
        foreach (var giver in answer.Givers())
        {
            var topic = ShakenBehind(giver);
            if (topic is null) return null;
            first ??= topic;
        }
        return first;
    }

    private TopicAt? ShakenBehind(RuleAt giver)
    {
        foreach (var evidence in decided.EvidenceOf(giver))
            if (Find(evidence.Finding, evidence.Subject) is { } tested && IsBorderline(tested))
                return tested;
        return null;
    }

    private bool IsBorderline(TopicAt topic) =>
        topic.State.Status == TopicStatus.Published
        && (topic.Givers().TrueForAll(g => g.IsBorderline) || Near.Exists(n => IsOtherwise(topic, RuleOf(n))) || Shaken(topic) is not null);

    private static bool IsOtherwise(TopicAt topic, RuleAt near) =>
        Instead(topic, near) is not null
        || (topic.Index == near.Index && near.Rule.Topics.Any(t => t.Topic == topic.Entry.Topic && !near.Publishes(t)));

    private TopicAt? Find(string topic, string subject)
    {
        foreach (var answered in decided.Topics)
            if (answered.Entry.Topic.Name == topic && answered.Subject == subject)
                return answered;
        return null;
    }
}
