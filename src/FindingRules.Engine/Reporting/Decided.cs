using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Reporting;

/// <summary>
/// An examination that was decided, to be reported: its subjects in the order in which a report names them, and of each the
/// rules and topics that there is something to say of. Those are few, however many the pack has.
/// </summary>
internal sealed class Decided
{
    private static readonly Comparer<RuleAt> RulesById = Comparer<RuleAt>.Create(static (a, b) => a.Position - b.Position);
    private static readonly Comparer<TopicAt> TopicsByName = Comparer<TopicAt>.Create(static (a, b) => a.Position - b.Position);

    private readonly Study _study;
    private readonly Dictionary<(int Index, int Position), ImmutableArray<Evidence>> _evidence = [];

    public Decided(Examination examination, Study study)
    {
        (Examination, _study) = (examination, study);
        Instances = ReportOrder.Of(examination, study);
        Live = LiveRules();
        Topics = AnsweredTopics();
        Filler = new WordingFiller(examination);
    }

    public Examination Examination { get; }

    public bool HasEarlierStudy => _study.Earlier is not null;

    public bool HasProtocol => !_study.Protocols.IsEmpty;

    public ImmutableArray<StudySubject> Sent => _study.Subjects;

    public ImmutableArray<int> Instances { get; }

    /// <summary>Rules that are not false, or would not be with the measures widened; by subject, then id.</summary>
    public ImmutableArray<RuleAt> Live { get; }

    /// <summary>Topics that some rule may answer or hold; by subject, then name.</summary>
    public ImmutableArray<TopicAt> Topics { get; }

    /// <summary>Every rule of every subject: for who asks of one that is false.</summary>
    public ImmutableArray<RuleAt> Rules =>
    [
        .. Instances.SelectMany(i => Enumerable.Range(0, Examination[i].Rules.Length).Select(p => new RuleAt(Examination, i, p)))
            .Where(r => r.Instance.Takes(r.Rule.IsPerStructure)),
    ];

    /// <summary>The same as results: by subject, then id and name.</summary>
    public Outcome Outcome
    {
        get
        {
            var (rules, topics) = (new List<RuleOutcome>(Live.Length), new List<TopicOutcome>(Topics.Length));
            foreach (var rule in Live)
                if (rule.State is var state)
                    rules.Add(new RuleOutcome(rule.Rule, rule.Instance.Subject, state.Truth, state.Widened, state.Standing));
            foreach (var topic in Topics)
                topics.Add(new TopicOutcome(
                    topic.Entry.Topic, Examination[topic.Index].Subject, topic.State.Status,
                    topic.State.Value < 0 ? null : topic.Entry.Topic.Values[topic.State.Value].Name));
            return new Outcome([.. rules.OrderBy(r => r.Subject)], [.. topics.OrderBy(t => t.Subject)]);
        }
    }

    public WordingFiller Filler { get; }

    /// <summary>What the rule rests on, followed up once however many lines speak of it.</summary>
    public ImmutableArray<Evidence> EvidenceOf(RuleAt rule)
    {
        if (!_evidence.TryGetValue((rule.Index, rule.Position), out var found))
            _evidence.Add((rule.Index, rule.Position), found = EvidenceWriter.Of(rule));
        return found;
    }

    public ImmutableArray<Evidence> EvidenceOf(List<RuleAt> rules)
    {
        if (rules.Count == 1) return EvidenceOf(rules[0]);
        var found = new Once<Evidence>();
        foreach (var rule in rules) found.AddAll(EvidenceOf(rule));
        return found.ToImmutable();
    }

    /// <summary>Whether the structure that the instance is or lies in was sent as normal.</summary>
    public bool IsSentAsNormal(int index)
    {
        var at = Examination[index];
        foreach (var sent in _study.Subjects)
            if (sent.IsNormal && ReferenceEquals(sent.Structure, at.Structure) && sent.Side == at.Side)
                return true;
        return false;
    }

    public Subject? Find(string subjectKey)
    {
        for (var i = 0; i < Examination.Count; i++)
            if (Examination[i].Subject is var subject && subject.Key == subjectKey)
                return subject;
        return null;
    }

    public string TitleOf(string subjectKey, string finding)
    {
        var vocabulary = Examination.Network.Pack.Vocabulary;
        var findings = Find(subjectKey) is { Structure: { } structure } ? structure.Kind.Findings : vocabulary.StudyFacts;
        return findings.GetValueOrDefault(finding)?.Title ?? finding.Replace('-', ' ');
    }

    private ImmutableArray<RuleAt> LiveRules()
    {
        var rules = ImmutableArray.CreateBuilder<RuleAt>();
        foreach (var index in Instances)
        {
            var start = rules.Count;
            foreach (var position in Examination[index].Live) rules.Add(new RuleAt(Examination, index, position));
            rules.Sort(start, rules.Count - start, RulesById);
        }
        return rules.DrainToImmutable();
    }

    private ImmutableArray<TopicAt> AnsweredTopics()
    {
        var topics = ImmutableArray.CreateBuilder<TopicAt>();
        foreach (var index in Instances)
        {
            var start = topics.Count;
            foreach (var position in Examination[index].Marked)
                if (Examination[index].TopicAt(position) is { IsDecided: true } state)
                    topics.Add(new TopicAt(Examination, index, position, state));
            topics.Sort(start, topics.Count - start, TopicsByName);
        }
        return topics.DrainToImmutable();
    }
}
