using System.Collections.Immutable;
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

    public RuleState State => Instance.Rules[Position];

    public RuleReference Reference => new(Rule.Id, Rule.Revision);

    /// <summary>True in force, but outside of what is settled: its width within the measurements' precision.</summary>
    public bool IsBorderline => State.Widened != State.Truth;

    /// <summary>What follows, in the words of the language.</summary>
    public string WouldConclude => string.Join("; ", Rule.Conclusions.Select(c => c switch
    {
        TopicConclusion topic => $"{topic.Topic.Name} {topic.Value.Name}",
        EvaluateConclusion evaluate => $"evaluate {evaluate.Step.Structure.Name}",
        NextStepConclusion step => $"{step.Step.Name} next",
        CautionConclusion caution => caution.Caution.Name,
        ProbabilityConclusion probability =>
            $"probability after {(probability.IsPositive ? "positive" : "negative")} {probability.Reference.Name}",
        HoldConclusion hold => $"hold {hold.Topic.Name}",
        _ => throw new System.Diagnostics.UnreachableException(),
    }));

    /// <summary>Whether each topic that it concludes was published with its value.</summary>
    public bool IsPublished
    {
        get
        {
            foreach (var given in Rule.Topics)
            {
                var state = StateOf(given.Topic);
                if (state.Status != TopicStatus.Published || given.Topic.Values[state.Value] != given.Value) return false;
            }
            return true;
        }
    }

    public TopicState StateOf(Topic topic)
    {
        for (var i = 0; i < Instance.Plan.Topics.Length; i++)
            if (Instance.Plan.Topics[i].Topic == topic)
                return Instance.Topics[i];
        return default;
    }
}

/// <summary>Every decided rule and topic of an examination, subjects in the order in which a report names them.</summary>
internal sealed class Decided
{
    public Decided(Examination examination, Model.Studies.Study study)
    {
        Examination = examination;
        HasEarlierStudy = study.Earlier is not null;
        SentAsNormal = study.Subjects.Where(s => s.IsNormal).Select(s => new Model.Studies.Subject(s.Structure, s.Side, null)).ToHashSet();
        var order = ReportOrder.Of(study);
        Instances =
        [
            .. Enumerable.Range(0, examination.Count).Where(i => examination[i].IsPresent)
                .OrderBy(i => order.GetValueOrDefault(examination[i].Subject.Whole, int.MaxValue))
                .ThenBy(i => examination[i].Subject.Structure is null)
                .ThenBy(i => examination[i].Subject),
        ];
        Rules =
        [
            .. Instances.SelectMany(i => Enumerable.Range(0, examination[i].Rules.Length).Select(p => new RuleAt(examination, i, p)))
                .Where(r => r.State.IsDecided),
        ];
    }

    public Examination Examination { get; }

    public bool HasEarlierStudy { get; }

    /// <summary>Structures that were sent as normal.</summary>
    public IReadOnlySet<Model.Studies.Subject> SentAsNormal { get; }

    public ImmutableArray<int> Instances { get; }

    public ImmutableArray<RuleAt> Rules { get; }

    public Model.Studies.Subject? Find(string subjectKey) => Enumerable.Range(0, Examination.Count)
        .Select(i => Examination[i].Subject)
        .FirstOrDefault(s => s.Key == subjectKey);

    public string TitleOf(string subjectKey, string finding)
    {
        var vocabulary = Examination.Network.Pack.Vocabulary;
        var findings = Find(subjectKey) is { Structure: { } structure } ? structure.Kind.Findings : vocabulary.StudyFacts;
        return findings.GetValueOrDefault(finding)?.Title ?? finding.Replace('-', ' ');
    }
}
