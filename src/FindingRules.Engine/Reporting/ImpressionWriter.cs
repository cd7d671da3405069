using System.Text;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Reporting;

/// <summary>
/// The text to paste. It carries what is held, open, borderline and not assessed, so that nothing is lost between
/// screen and report.
/// </summary>
internal sealed class ImpressionWriter(Decided decided, Reading reading)
{
    private const int MostAsked = 5;

    private readonly StringBuilder _text = new();

    public static string Write(Decided decided, Reading reading) => new ImpressionWriter(decided, reading).Write();

    private string Write()
    {
        foreach (var suggestion in reading.Suggestions) Line(suggestion.Text + BorderlineMark(suggestion));
        if (reading.Calm is { } calm) Line(calm);
        foreach (var conflict in reading.Conflicts)
            Line(
                $"Contradictory: {TopicAt(conflict.Topic, conflict.Subject)} could be "
                + $"{Either(conflict.Topic, conflict.Values.Select(v => v.Value))}; none is given. Check the findings.");
        foreach (var held in reading.Held)
            Line($"Withheld: {TopicAt(held.Topic, held.Subject)}. {string.Join(" ", held.Because)}");
        foreach (var open in OpenTopics()) Line(open);
        foreach (var probability in reading.Probabilities) Line(probability.Text);
        foreach (var step in reading.NextSteps)
            if (!step.IsDone)
                Line($"{Lead(step)}: {step.Text}");
        foreach (var caution in reading.Cautions) Line($"Caution: {caution.Text}");
        if (!reading.Borderline.IsEmpty)
            foreach (var near in Near()) Line(near);
        foreach (var gap in reading.NotAssessed) Line(GapLine(gap));
        // Beside an earlier study the note is the answer; what could still be measured is no lack.
        if (_text.Length == 0 && (reading.Notes.IsEmpty || !decided.HasEarlierStudy) && reading.AskNext is [_, ..] asked)
            Line($"Undecided: what was found settles nothing yet. Needed: {string.Join("; ", asked.Take(MostAsked).Select(m => m.Text))}.");
        foreach (var note in reading.Notes) Line($"Note: {note}");
        if (_text.Length == 0)
            Line("No rule of this pack applies to what was sent. No protocol was named, so completeness was not checked.");
        Line(reading.Notice);
        return _text.ToString().TrimEnd('\n');
    }

    private void Line(string line) => _text.Append(line).Append('\n');

    private static string Lead(SuggestedStep step) => step.Urgency switch
    {
        "urgent" => "Next, urgent",
        "soon" => "Next, soon",
        _ => "Next",
    };

    private string BorderlineMark(Suggestion suggestion)
    {
        if (!suggestion.IsBorderline) return "";
        var ids = suggestion.Rules.Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        var at = reading.Borderline.Where(b => b.Subject == suggestion.Subject).ToList();
        var others = at.Where(b => !b.Applies).SelectMany(b => TopicsOf(b).Where(t => t.Topic.Name == suggestion.Topic))
            .Select(t => t.Value.Title).Distinct().ToList();
        var measures = at.Where(b => ids.Contains(b.Rule.Id)).SelectMany(b => b.Measures);
        return $" (Borderline{(others.Count == 0 ? "" : $", could also be {string.Join(" or ", others)}")}: {Distances(measures)}.)";
    }

    /// <summary>
    /// What a measurement a little off would have added. Rules that answer no topic have no word for a reader of the
    /// report; they stay in the reading.
    /// </summary>
    private IEnumerable<string> Near() =>
        from near in reading.Borderline
        where !near.Applies
        from given in TopicsOf(near)
        where !reading.Suggestions.Any(s => s.IsBorderline && s.Topic == given.Topic.Name && s.Subject == near.Subject)
        group near by $"{given.Topic.Title} of the {TitleOf(near.Subject)} could also be {given.Value.Title}" into same
        select $"Borderline: {same.Key} ({Distances(same.SelectMany(n => n.Measures))}).";

    private IEnumerable<TopicConclusion> TopicsOf(BorderlineRule near) =>
        decided.Live.First(r => r.Rule.Id == near.Rule.Id && r.Instance.Subject.Key == near.Subject).Rule.Topics;

    /// <summary>The measures of one comparison belong together: the distance is that of what was worked out from them.</summary>
    private string Distances(IEnumerable<Evidence> measures)
    {
        var texts = measures.GroupBy(m => m.Statement)
            .Select(same => (
                Values: string.Join(", ", same.Select(m => $"{MeasureTitle(m)} {m.Value}").Distinct()),
                Bound: same.FirstOrDefault(m => m is { Distance: not null, Threshold: not null })))
            .Select(t => t.Bound is { } bound ? $"{t.Values} is {bound.Distance} from {bound.Threshold}" : t.Values).Distinct().ToList();
        return texts.Count == 0 ? "within the precision of measurement" : string.Join("; ", texts);
    }

    private string MeasureTitle(Evidence measure)
    {
        var isEarlier = measure.Subject.StartsWith("earlier ", StringComparison.Ordinal);
        var key = isEarlier ? measure.Subject["earlier ".Length..] : measure.Subject;
        return (isEarlier ? "earlier " : "") + TitleOf(key, measure.Finding);
    }

    /// <summary>Topics for which a rule is true but something not known could withdraw it.</summary>
    private IEnumerable<string> OpenTopics()
    {
        var told = new Once<(Topic Topic, int Index)>();
        foreach (var rule in decided.Live)
        {
            if (rule.State.Standing is not (Standing.Open or Standing.Stands)) continue;
            foreach (var conclusion in rule.Rule.Conclusions)
                if (conclusion is TopicConclusion given && rule.StateOf(given.Topic).Status == TopicStatus.Open)
                    told.Add((given.Topic, rule.Index));
        }
        foreach (var (topic, index) in told.ToImmutable())
        {
            var missing = MissingFor(topic, index).ToList();
            yield return $"Left open: {topic.Title} of the {decided.Examination[index].Subject.Title}"
                + (missing.Count == 0 ? "." : $"; it needs {string.Join(", ", missing)}.");
        }
    }

    /// <summary>What the true rules wait for that could still give the topic.</summary>
    private IEnumerable<string> MissingFor(Topic topic, int index)
    {
        var waiting = decided.Live
            .Where(r => r.Index == index && r.State.Standing is Standing.Open or Standing.Stands
                && r.Rule.Topics.Any(t => t.Topic == topic))
            .Select(r => r.Rule.Id).ToHashSet(StringComparer.Ordinal);
        return reading.Unknown.Where(u => u.Subject == decided.Examination[index].Subject.Key && waiting.Contains(u.Rule.Id))
            .SelectMany(u => u.Missing).Distinct().Select(FindingTitle).Distinct();
    }

    private static string FindingTitle(MissingKey key) => key.Finding.Replace('-', ' ');

    private string TopicAt(string topic, string subject) =>
        $"{decided.Examination.Network.Pack.Symbols.Topics[topic].Title} of the {TitleOf(subject)}";

    private string Either(string topic, IEnumerable<string> values)
    {
        var known = decided.Examination.Network.Pack.Symbols.Topics[topic];
        return string.Join(" or ", values.Select(v => known.Find(v)?.Title ?? v));
    }

    private string TitleOf(string subjectKey) => Find(subjectKey)?.Title ?? subjectKey;

    private string TitleOf(string subjectKey, string finding)
    {
        var vocabulary = decided.Examination.Network.Pack.Vocabulary;
        var findings = Find(subjectKey) is { Structure: { } structure } ? structure.Kind.Findings : vocabulary.StudyFacts;
        return findings.GetValueOrDefault(finding)?.Title ?? finding.Replace('-', ' ');
    }

    private Subject? Find(string subjectKey)
    {
        for (var i = 0; i < decided.Examination.Count; i++)
            if (decided.Examination[i].Subject is var subject && subject.Key == subjectKey)
                return subject;
        return null;
    }

    private string GapLine(NotAssessed gap)
    {
        var findings = string.Join(", ", gap.Findings.Select(f => TitleOf(gap.Subject, f)));
        if (gap.Subject == Subject.Study.Key) return $"{(gap.IsNotAssessable ? "Could not be told" : "Not stated")}: {findings}.";
        return gap.IsNotAssessable
            ? $"Not assessable: {TitleOf(gap.Subject)} ({findings})."
            : $"Not assessed: {TitleOf(gap.Subject)} ({findings}).";
    }
}
