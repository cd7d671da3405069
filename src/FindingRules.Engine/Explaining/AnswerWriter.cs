using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Explanations;
using FindingRules.Model.Packs;

namespace FindingRules.Engine.Explaining;

/// <summary>What became of topics, each once, with every rule that had a say.</summary>
internal sealed class AnswerWriter(Examination examination, Func<RuleAt, ProofKey> prove)
{
    private const int FewEnough = 4;

    private readonly Dictionary<(int, Topic), AnswerKey> _keys = [];
    private readonly ImmutableArray<TopicAnswer>.Builder _answers = ImmutableArray.CreateBuilder<TopicAnswer>();

    public ImmutableArray<TopicAnswer> All => _answers.ToImmutable();

    /// <summary>Null where the topic is not answered there: the structure was not examined.</summary>
    public AnswerKey? Of(int index, Topic topic)
    {
        var at = examination[index].IsLesion && topic.IsPerStructure ? examination[index].Whole : index;
        if (_keys.TryGetValue((at, topic), out var known)) return known;
        var instance = examination[at];
        var position = instance.Plan.Topics.ToList().FindIndex(t => t.Topic == topic);
        if (position < 0 || !instance.IsPresent || !instance.Topics[position].IsDecided) return null;
        var key = new AnswerKey(topic.Name, instance.Subject.Key);
        _keys.Add((at, topic), key);
        _answers.Add(Make(at, instance.Plan.Topics[position], instance.Topics[position]));
        return key;
    }

    private TopicAnswer Make(int index, TopicEntry entry, TopicState state)
    {
        var subject = examination[index].Subject;
        var givers = entry.Givers.Select(g => (Rule: new RuleAt(examination, index, g.Rule), g.Value)).ToList();
        var holders = entry.Holders.Select(h => new RuleAt(examination, index, h)).ToList();
        var value = state.Status == TopicStatus.Published ? entry.Topic.Values[state.Value] : null;
        return new TopicAnswer(
            entry.Topic.Name, entry.Topic.Title, subject.Key, subject.Title, state.Status.ToString().ToLowerInvariant(),
            value?.Name, value?.Title,
            [.. givers.Select(g => ProofWriter.Glance(g.Rule, entry.Topic.Values[g.Value].Name))],
            [.. holders.Select(h => ProofWriter.Glance(h))],
            [.. Settling(index, entry, state, [.. givers.Select(g => g.Rule)], holders).Distinct().Select(prove)]);
    }

    private IEnumerable<RuleAt> Settling(int index, TopicEntry entry, TopicState state, List<RuleAt> givers, List<RuleAt> holders)
    {
        var standing = givers.Where(r => r.State.Standing == Standing.Stands);
        return state.Status switch
        {
            TopicStatus.Published or TopicStatus.Conflict => standing,
            TopicStatus.Held => holders.Where(r => r.State.Standing == Standing.Stands).Concat(standing),
            TopicStatus.Open => OpenRules.Of(examination, index, entry.Topic).Concat(standing),
            _ => givers.Count <= FewEnough ? givers : [],
        };
    }
}
