using FindingRules.Model.Packs;
using FindingRules.Model.Readings;

namespace FindingRules.Engine.Reporting;

/// <summary>Borderline decisions in the words of the report: marks behind what was said, and lines for what nearly was.</summary>
internal sealed class BorderlineText(Decided decided, Reading reading)
{
    private readonly HashSet<(string, string)> _told = [];
    private readonly MeasureDistances _distances = new(decided);
    private readonly NearAnswers _near = new(decided, reading);

    /// <summary>The same distance is told of a subject once, unless it could have led elsewhere; the mark stays.</summary>
    public string Mark(Suggestion suggestion)
    {
        if (reading.Borderline.IsEmpty) return "";
        var against = _near.Against(suggestion);
        if (!suggestion.IsBorderline && against.Count == 0)
            return _near.RestsOn(suggestion) is { } topic ? $" (Borderline: rests on {topic}, which is borderline.)" : "";
        var ids = suggestion.Rules.Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        var others = !suggestion.IsBorderline ? [] : _near.Near.Where(b => b.Subject == suggestion.Subject)
            .SelectMany(b => _near.RuleOf(b).Rule.Topics)
            .Where(t => t.Topic.Name == suggestion.Topic && t.Value.Name != suggestion.Value)
            .Select(t => t.Value.Title).Distinct().ToList();
        List<string> instead = [.. against.Select(a => a.Instead).Distinct()];
        if (others.Count > 0) instead.Insert(0, $"could also be {string.Join(" or ", others)}");
        var distances = _distances.Of(suggestion.Subject, reading.Borderline
            .Where(b => b.Subject == suggestion.Subject && ids.Contains(b.Rule.Id)).Concat(against.Select(a => a.Rule))
            .SelectMany(b => b.Measures));
        if (!_told.Add((suggestion.Subject, distances)) && instead.Count == 0) return " (Borderline.)";
        return $" ({string.Join(", ", instead.Prepend("Borderline"))}: {distances}.)";
    }

    /// <summary>
    /// What a measurement a little off would have added, with the subject. Of rules that answer no topic only steps that cannot
    /// wait are told; the rest stays in the reading.
    /// </summary>
    public IEnumerable<(string Subject, string Line)> Near() => reading.Borderline.IsEmpty ? [] : Topics().Concat(Steps());

    private IEnumerable<(string, string)> Topics() =>
        from near in _near.Near
        from given in _near.RuleOf(near).Rule.Topics
        where !reading.Suggestions.Any(s => s.IsBorderline && s.Topic == given.Topic.Name && s.Subject == near.Subject)
        where !reading.Held.Any(h => h.Topic == given.Topic.Name && h.Subject == near.Subject)
        where !_near.RuleOf(near).Publishes(given)
        group (near, given) by (near.Subject, given.Topic) into same
        let asked = $"{same.Key.Topic.Title} of the {decided.Find(same.Key.Subject)?.Title ?? same.Key.Subject}"
        let values = string.Join(" or ", same.Select(n => n.given.Value.Title).Distinct())
        let distances = _distances.Of(same.Key.Subject, same.SelectMany(n => n.near.Measures))
        select (same.Key.Subject, $"Borderline: {asked} could also be {values} ({distances}).");

    private IEnumerable<(string, string)> Steps() =>
        from near in _near.Near
        let rule = _near.RuleOf(near)
        from step in rule.Rule.Conclusions.OfType<NextStepConclusion>()
        where step.Step.Urgency != Urgency.Routine
        where !IsAsUrgentAlready(near.Subject, step.Step.Urgency)
        let text = decided.Filler.Fill(step.Step.Says, rule.Index)
        group near by (near.Subject, text) into same
        let distances = _distances.Of(same.Key.Subject, same.SelectMany(n => n.Measures))
        select (same.Key.Subject, $"Borderline for a next step ({distances}): {same.Key.text}");

    /// <summary>A subject that something urgent is said of needs no word on what was nearly as urgent.</summary>
    private bool IsAsUrgentAlready(string subject, Urgency urgency) => reading.NextSteps.Any(s =>
        !s.IsDone && s.Subjects.Contains(subject) && Enum.Parse<Urgency>(s.Urgency, ignoreCase: true) >= urgency);
}
