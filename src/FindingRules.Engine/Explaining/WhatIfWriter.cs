using System.Collections.Immutable;
using FindingRules.Engine.Explaining.Changing;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Explanations;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Explaining;

/// <summary>What would take back each line of the reading, and how near to it the measurements are.</summary>
internal sealed class WhatIfWriter(WayWriter ways, SearchLimits limits)
{
    public WhatIf Write(ExplainedLine line, ImmutableArray<RuleAt> by, ImmutableArray<Proof> proofs, ImmutableArray<TopicAnswer> answers)
    {
        var (found, search) = ways.Search(GoalOf(line, by), limits);
        var rests = RestsOn(line.By, proofs.ToDictionary(p => p.Key), answers.ToDictionary(a => a.Key));
        return new WhatIf(
            line, found, search, [.. rests.SelectMany(p => MarginsIn(p, p.Condition)).Distinct()], rests.All(p => !p.IsBorderline));
    }

    private static Goal GoalOf(ExplainedLine line, ImmutableArray<RuleAt> by)
    {
        ImmutableArray<(Rule, Subject)> rules = [.. by.Select(r => (r.Rule, r.Instance.Subject))];
        switch (line.Sort)
        {
            case "suggestion":
                var given = by[0].Rule.Topics.First(t => t.Topic.Name == line.Name);
                return new AnswerGone(given.Topic, given.Value.Name, by[0].Instance.Subject);
            case "held" or "conflict":
                var topic = by[0].Examination.Network.Pack.Symbols.Topics[line.Name];
                return new AnswerFreed(topic, by[0].Instance.Subject);
            case "caution":
                return new WarningGone(rules);
            default:
                return new StepGone(rules);
        }
    }

    /// <summary>The rules behind the line, and behind the answers that those test.</summary>
    private static List<Proof> RestsOn(
        ImmutableArray<ProofKey> by, Dictionary<ProofKey, Proof> proofs, Dictionary<AnswerKey, TopicAnswer> answers)
    {
        var found = new List<Proof>();
        var open = new Queue<ProofKey>(by);
        var seen = new HashSet<ProofKey>(by);
        while (open.TryDequeue(out var key))
        {
            if (!proofs.TryGetValue(key, out var proof)) continue;
            found.Add(proof);
            foreach (var next in AnswersIn(proof.Condition).SelectMany(a => answers[a].Proven))
                if (seen.Add(next))
                    open.Enqueue(next);
        }
        return found;
    }

    private static IEnumerable<AnswerKey> AnswersIn(ProofPart part) =>
        part.Looks.Select(l => l.Answer).OfType<AnswerKey>().Concat(part.Parts.SelectMany(AnswersIn));

    private static IEnumerable<Margin> MarginsIn(Proof proof, ProofPart part) =>
        part.Looks.Where(l => l.Calculation is { Threshold: not null, Left.Value: not null })
            .Select(l => MarginOf(proof, part, l.Calculation!))
            .Concat(part.Parts.Where(p => Carries(part, p)).SelectMany(p => MarginsIn(proof, p)));

    /// <summary>Where one part is enough, the others carry nothing.</summary>
    private static bool Carries(ProofPart whole, ProofPart part) => (whole.Sort, whole.Truth) switch
    {
        ("any", Truth.True) or ("all", Truth.False) => part.Truth == whole.Truth,
        _ => true,
    };

    private static Margin MarginOf(Proof proof, ProofPart part, Calculation c) => new(
        proof.Key, part.Words, $"{Titles(c.Left)}{(c.Left.Title is null ? " =" : "")} {c.Left.Value}", c.Threshold!, c.Distance,
        c.Precision, c.IsWithinPrecision);

    private static string Titles(WorkedOut part) => part switch
    {
        { Title: { } title } => title,
        { From: [var left, var right] } => $"{Titles(left)} {part.Sort} {Titles(right)}",
        _ => part.Words,
    };

    /// <summary>What was done already cannot be taken back.</summary>
    public static bool IsAbout(ExplainedLine line) => line.Sort != "done-step";
}
