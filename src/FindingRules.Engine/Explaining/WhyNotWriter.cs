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
    public WhyNot Write(RuleAt rule)
    {
        var key = proofs.Prove(rule);
        var obstacle = ObstacleOf(rule);
        if (obstacle is null) return new WhyNot(key, Stands: true, null, [], new Search(true, 0, 0, 0, []));
        var (found, search) = ways.Search(new RuleStands(rule.Rule, rule.Instance.Subject), limits);
        return new WhyNot(key, Stands: false, obstacle, found, search);
    }

    private Obstacle? ObstacleOf(RuleAt rule) => rule.State.Standing switch
    {
        Standing.False => new Obstacle("false-part", Part(rule, Truth.False), null, []),
        Standing.Yields => new Obstacle("superior", null, null, Superiors(rule, Truth.True)),
        Standing.Unknown => new Obstacle("unknown-part", Part(rule, Truth.Unknown), null, []),
        Standing.Open => new Obstacle("unknown-superior", null, null, Superiors(rule, Truth.Unknown)),
        _ => rule.Rule.Topics.Select(t => OfTopic(rule, t)).FirstOrDefault(o => o is not null),
    };

    private ProofPart Part(RuleAt rule, Truth truth)
    {
        var (condition, node) = First(rule.Rule.Condition, rule.Entry.Condition, rule.Index, truth);
        return proofs.Part(condition, node, rule.Index, subject: null);
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
            sort, null, answer, [.. rules.Where(r => standings.Contains(r.State.Standing)).Select(proofs.Prove).Distinct()]);
    }

    private static bool IsOpen(RuleAt rule) => rule.State.Standing is Standing.Unknown or Standing.Open;
}
