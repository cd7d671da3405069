using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Reference;

/// <summary>What became of each topic: filled layer by layer, so that a rule only ever asks for what is settled.</summary>
internal sealed class Answers(IReadOnlyList<Rule> rules, Presence present)
{
    private readonly Dictionary<(Topic, Subject), (TopicOutcome Outcome, ImmutableHashSet<string> Possible)> _answers = [];

    public TopicOutcome? At(Topic topic, Subject subject) => _answers.GetValueOrDefault((topic, subject)).Outcome;

    public void Fill(IReadOnlyList<Topic> topics, ConditionTruth truths)
    {
        var open = topics.ToList();
        while (open.Count > 0)
        {
            var ready = open.Where(topic => !BearOn(topic).Any(rule => TestedTopics.Of(rule.Condition).Any(open.Contains))).ToList();
            // INVARIANT: a pack with a cycle is an error and comes no further than its reader.
            if (ready.Count == 0) throw new InvalidOperationException("The topics of the pack wait for each other.");
            foreach (var topic in ready)
                foreach (var subject in present.SubjectsOf(topic.Scope, topic.IsPerStructure))
                    _answers.Add((topic, subject), Decide(topic, subject, truths));
            open.RemoveAll(ready.Contains);
        }
    }

    public Truth TruthOf(Topic topic, ImmutableSortedSet<string> values, Subject subject)
    {
        if (!present.Has(subject)) return Truth.Unknown;
        var (outcome, possible) = _answers[(topic, subject)];
        if (outcome.Status == TopicStatus.Published) return Kleene.Of(values.Contains(outcome.Value!));
        return possible.Overlaps(values) ? Truth.Unknown : Truth.False;
    }

    public Standing StandingOf(Rule rule, Subject subject, ConditionTruth truths)
    {
        var truth = truths.Of(rule.Condition, subject);
        if (truth == Truth.False) return Standing.False;
        var above = SuperiorsOf(rule)
            .Where(r => r.Scope.Covers(subject.Structure))
            .Select(r => truths.Of(r.Condition, subject))
            .Aggregate(Truth.False, Kleene.Or);
        if (above == Truth.True) return Standing.Yields;
        if (truth == Truth.Unknown) return Standing.Unknown;
        return above == Truth.Unknown ? Standing.Open : Standing.Stands;
    }

    private (TopicOutcome, ImmutableHashSet<string>) Decide(Topic topic, Subject subject, ConditionTruth truths)
    {
        var here = rules.Where(r => r.Scope.Covers(subject.Structure)).ToList();
        var given = (from rule in here
                     from conclusion in rule.Topics
                     where conclusion.Topic == topic
                     select (conclusion.Value.Name, Standing: StandingOf(rule, subject, truths))).ToList();
        var holds = here.Where(r => r.Holds.Any(h => h.Topic == topic)).Select(r => StandingOf(r, subject, truths)).ToList();

        var sure = given.Where(g => g.Standing == Standing.Stands).Select(g => g.Name).ToHashSet();
        var possible = given.Where(g => g.Standing is Standing.Unknown or Standing.Open or Standing.Stands)
            .Select(g => g.Name).ToImmutableHashSet();
        var status = sure.Count >= 2 ? TopicStatus.Conflict
            : holds.Contains(Standing.Stands) ? TopicStatus.Held
            : holds.Contains(Standing.Unknown) || holds.Contains(Standing.Open) ? TopicStatus.Open
            : sure.Count == 1 && possible.SetEquals(sure) ? TopicStatus.Published
            : possible.IsEmpty ? TopicStatus.None
            : TopicStatus.Open;
        return (new TopicOutcome(topic, subject, status, status == TopicStatus.Published ? sure.Single() : null), possible);
    }

    /// <summary>The rules that conclude or hold the topic, and all that these may yield to.</summary>
    private IEnumerable<Rule> BearOn(Topic topic) => rules
        .Where(r => r.Topics.Any(c => c.Topic == topic) || r.Holds.Any(h => h.Topic == topic))
        .SelectMany(r => SuperiorsOf(r).Prepend(r));

    private HashSet<Rule> SuperiorsOf(Rule rule)
    {
        var found = rules.Where(r => r.Over.Contains(rule.Id)).ToHashSet();
        for (var before = 0; before < found.Count;)
        {
            before = found.Count;
            found.UnionWith(rules.Where(r => found.Any(f => r.Over.Contains(f.Id))).ToList());
        }
        return found;
    }
}
