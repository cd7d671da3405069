using FindingRules.Model.Packs;
using FindingRules.Model.Readings;

namespace FindingRules.Engine.Reporting;

/// <summary>Borderline decisions in the words of the report: marks behind what was said, and lines for what nearly was.</summary>
internal sealed class BorderlineText(Decided decided, Reading reading)
{
    private readonly HashSet<(string, string)> _marked = [];

    /// <summary>The same distance is told of a subject once, unless it could have led elsewhere.</summary>
    public string Mark(Suggestion suggestion)
    {
        if (!suggestion.IsBorderline) return "";
        var ids = suggestion.Rules.Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        var at = reading.Borderline.Where(b => b.Subject == suggestion.Subject).ToList();
        var others = at.Where(b => !b.Applies && IsOfMeasuring(b))
            .SelectMany(b => RuleOf(b).Rule.Topics.Where(t => t.Topic.Name == suggestion.Topic))
            .Select(t => t.Value.Title).Distinct().ToList();
        var distances = Distances(at.Where(b => ids.Contains(b.Rule.Id)).SelectMany(b => b.Measures));
        if (!_marked.Add((suggestion.Subject, distances)) && others.Count == 0) return "";
        return $" (Borderline{(others.Count == 0 ? "" : $", could also be {string.Join(" or ", others)}")}: {distances}.)";
    }

    /// <summary>
    /// What a measurement a little off would have added, with the subject. Of rules that answer no topic only steps that cannot
    /// wait are told; the rest stays in the reading.
    /// </summary>
    public IEnumerable<(string Subject, string Line)> Near() => reading.Borderline.IsEmpty ? [] : Topics().Concat(Steps());

    private IEnumerable<(string, string)> Topics() =>
        from near in reading.Borderline
        where !near.Applies && IsOfMeasuring(near)
        from given in RuleOf(near).Rule.Topics
        where !reading.Suggestions.Any(s => s.IsBorderline && s.Topic == given.Topic.Name && s.Subject == near.Subject)
        where !reading.Held.Any(h => h.Topic == given.Topic.Name && h.Subject == near.Subject)
        group (near, given) by (near.Subject, given.Topic) into same
        let asked = $"{same.Key.Topic.Title} of the {TitleOf(same.Key.Subject)}"
        let values = string.Join(" or ", same.Select(n => n.given.Value.Title).Distinct())
        select (same.Key.Subject, $"Borderline: {asked} could also be {values} ({Distances(same.SelectMany(n => n.near.Measures))}).");

    private IEnumerable<(string, string)> Steps() =>
        from near in reading.Borderline
        where !near.Applies && IsOfMeasuring(near)
        let rule = RuleOf(near)
        from step in rule.Rule.Conclusions.OfType<NextStepConclusion>()
        where step.Step.Urgency != Urgency.Routine
        where !IsAsUrgentAlready(near.Subject, step.Step.Urgency)
        let text = decided.Filler.Fill(step.Step.Says, rule.Index)
        group near by (near.Subject, text) into same
        select (same.Key.Subject, $"Borderline for a next step ({Distances(same.SelectMany(n => n.Measures))}): {same.Key.text}");

    /// <summary>A subject that something urgent is said of needs no word on what was nearly as urgent.</summary>
    private bool IsAsUrgentAlready(string subject, Urgency urgency) => reading.NextSteps.Any(s =>
        !s.IsDone && s.Subjects.Contains(subject) && Enum.Parse<Urgency>(s.Urgency, ignoreCase: true) >= urgency);

    /// <summary>Whether the precision of measuring alone could make it true; what was not sent is asked for elsewhere.</summary>
    private bool IsOfMeasuring(BorderlineRule near) => NearTruth.IsNear(RuleOf(near));

    private RuleAt RuleOf(BorderlineRule near) =>
        decided.Live.First(r => r.Rule.Id == near.Rule.Id && r.Instance.Subject.Key == near.Subject);

    /// <summary>The measures of one comparison belong together: the distance is that of what was worked out from them.</summary>
    private string Distances(IEnumerable<Evidence> measures)
    {
        var texts = measures.GroupBy(m => m.Statement).Select(same => Distance([.. same.DistinctBy(m => (m.Subject, m.Finding))]))
            .Distinct().ToList();
        return texts.Count == 0 ? "within the precision of measurement" : string.Join("; ", texts);
    }

    private string Distance(IReadOnlyList<Evidence> measures)
    {
        var values = string.Join(", ", measures.Select((m, i) =>
            $"{(measures.Take(i).Any(o => o.Finding == m.Finding && !IsEarlier(m)) ? "other side" : MeasureTitle(m))} {m.Value}"));
        return measures.FirstOrDefault(m => m is { Distance: not null, Threshold: not null }) is not { } bound ? values
            : measures.Count == 1 ? $"{values} is {bound.Distance} from {bound.Threshold}"
            : $"{values}: {bound.Distance} from the limit of {bound.Threshold}";
    }

    private static bool IsEarlier(Evidence measure) => measure.Subject.StartsWith("earlier ", StringComparison.Ordinal);

    private string MeasureTitle(Evidence measure) => IsEarlier(measure)
        ? $"earlier {decided.TitleOf(measure.Subject["earlier ".Length..], measure.Finding)}"
        : decided.TitleOf(measure.Subject, measure.Finding);

    private string TitleOf(string subjectKey) => decided.Find(subjectKey)?.Title ?? subjectKey;
}
