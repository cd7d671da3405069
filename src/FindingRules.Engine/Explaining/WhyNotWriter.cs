using System.Collections.Immutable;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Explaining.Changing;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Conditions;
using FindingRules.Model.Explanations;
using FindingRules.Model.Packs;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Explaining;

/// <summary>What stood in a rule's way first, and the smallest changes after which it would stand.</summary>
internal sealed class WhyNotWriter(Examination examination, ProofWriter proofs, WayWriter ways, SearchLimits limits)
{
    private const int FewRules = 4;

    private readonly HashSet<(int, TopicStatement)> _looked = [];

    public WhyNot Write(RuleAt rule)
    {
        _looked.Clear();
        var key = proofs.Prove(rule);
        var obstacle = ObstacleOf(rule);
        if (obstacle is null) return new WhyNot(key, Stands: true, null, [], new Search(true, 0, 0, 0, []));
        var (found, search) = ways.Search(new RuleStands(rule.Rule, rule.Instance.Subject), limits);
        return new WhyNot(key, Stands: false, obstacle, found, search);
    }

    private Obstacle? ObstacleOf(RuleAt rule) => rule.State.Standing switch
    {
        Standing.False => OfPart("false-part", rule, Truth.False),
        Standing.Yields => new Obstacle("superior", null, null, Superiors(rule, Truth.True), []),
        Standing.Unknown => OfPart("unknown-part", rule, Truth.Unknown),
        Standing.Open => new Obstacle("unknown-superior", null, null, Superiors(rule, Truth.Unknown), []),
        _ => rule.Rule.Topics.Select(t => OfTopic(rule, t)).FirstOrDefault(o => o is not null),
    };

    private Obstacle OfPart(string sort, RuleAt rule, Truth truth)
    {
        var (condition, node) = First(rule.Rule.Condition, rule.Entry.Condition, rule.Index, truth);
        var part = proofs.Part(condition, node, rule.Index, subject: null);
        return new Obstacle(sort, part, null, [], condition is TopicStatement tested ? [.. Behind(rule, tested, part)] : []);
    }

    /// <summary>Down through lists of which every part is needed; any other part is told whole.</summary>
    private (Condition, Node) First(Condition condition, Node node, int instance, Truth truth)
    {
        if ((condition, node) is not (AllOf all, AllNode nodes)) return (condition, node);
        for (var i = 0; i < nodes.Parts.Length; i++)
            if (nodes.Parts[i].Decide(examination, instance, isWidened: false) == truth)
                return First(all.Parts[i], nodes.Parts[i], instance, truth);
        return (condition, node);
    }

    /// <summary>Down to the findings: what kept the rules that give the answer asked for from giving it.</summary>
    private IEnumerable<Hindrance> Behind(RuleAt rule, TopicStatement tested, ProofPart part)
    {
        if (!_looked.Add((rule.Index, tested))) yield break;
        foreach (var subject in part.Looks.Select(l => l.Answer).OfType<AnswerKey>().Select(a => a.Subject).Distinct())
            foreach (var giver in Givers(subject, tested).Take(FewRules))
                if (ObstacleOf(giver) is { } obstacle)
                    yield return new Hindrance(proofs.Prove(giver), obstacle);
    }

    private IEnumerable<RuleAt> Givers(string subject, TopicStatement tested) =>
        from index in Enumerable.Range(0, examination.Count)
        where examination[index].IsPresent && examination[index].Subject.Key == subject
        from entry in examination[index].Plan.Topics
        where entry.Topic == tested.Topic
        from giver in entry.Givers
        where tested.Values.Contains(entry.Topic.Values[giver.Value].Name)
        select new RuleAt(examination, index, giver.Rule);

    private ImmutableArray<ProofKey> Superiors(RuleAt rule, Truth truth) =>
    [
        .. rule.Entry.Superiors.Select(p => rule with { Position = p })
            .Where(r => r.State.IsDecided && r.State.Truth == truth).Select(proofs.Prove),
    ];

    private Obstacle? OfTopic(RuleAt rule, TopicConclusion given)
    {
        var answer = proofs.Answer(rule.Index, given.Topic);
        var entry = rule.Instance.Plan.Topics.First(t => t.Topic == given.Topic);
        var holders = entry.Holders.Select(p => rule with { Position = p }).ToList();
        var others = entry.Givers.Where(g => entry.Topic.Values[g.Value] != given.Value)
            .Select(g => rule with { Position = g.Rule }).ToList();
        return rule.StateOf(given.Topic).Status switch
        {
            TopicStatus.Held => Blocked("held", holders, Standing.Stands),
            TopicStatus.Conflict => Blocked("conflict", others, Standing.Stands),
            TopicStatus.Open when holders.Exists(IsOpen) => Blocked("unknown-hold", holders, Standing.Unknown, Standing.Open),
            TopicStatus.Open => Blocked("other-answer", others, Standing.Unknown, Standing.Open),
            _ => null,
        };

        Obstacle Blocked(string sort, List<RuleAt> rules, params Standing[] standings) => new(
            sort, null, answer, [.. rules.Where(r => standings.Contains(r.State.Standing)).Select(proofs.Prove).Distinct()], []);
    }

    private static bool IsOpen(RuleAt rule) => rule.State.Standing is Standing.Unknown or Standing.Open;
}
