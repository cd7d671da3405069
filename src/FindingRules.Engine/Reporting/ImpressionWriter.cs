using System.Collections.Immutable;
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
    private readonly StringBuilder _text = new();

    public static string Write(Decided decided, Reading reading) => new ImpressionWriter(decided, reading).Write();

    private string Write()
    {
        var borderline = new BorderlineText(decided, reading);
        foreach (var suggestion in reading.Suggestions) Line(suggestion.Text + borderline.Mark(suggestion));
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
        foreach (var (_, near) in borderline.Near()) Line(near);
        foreach (var gap in reading.NotAssessed) Line(GapLine(gap));
        foreach (var hidden in HiddenLooks()) Line(GapLine(hidden));
        if (_text.Length == 0)
            foreach (var line in new SilentText(decided, reading).Lines()) Line(line);
        foreach (var note in reading.Notes) Line($"Note: {note}");
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

    private string TitleOf(string subjectKey) => decided.Find(subjectKey)?.Title ?? subjectKey;

    /// <summary>A look that was tried counts as done; that it told nothing stays in the text.</summary>
    private IEnumerable<NotAssessed> HiddenLooks()
    {
        var told = new Once<int>();
        foreach (var rule in decided.Live)
        {
            if (rule.State.Standing != Standing.Stands || !rule.IsPublished) continue;
            foreach (var conclusion in rule.Rule.Conclusions)
            {
                if (conclusion is not EvaluateConclusion { Step: var step }
                    || !DoneSteps.IsDone(decided.Examination, step, rule.Index)) continue;
                var target = DoneSteps.Target(decided.Examination, step, rule.Index);
                var hidden = DoneSteps.NotAssessable(decided.Examination, target, step);
                var subject = decided.Examination[target].Subject.Key;
                if (hidden.IsEmpty || told.Contains(target) || IsGap(subject, hidden)) continue;
                told.Add(target);
                yield return new NotAssessed("", subject, hidden, IsNotAssessable: true);
            }
        }
    }

    private bool IsGap(string subject, ImmutableArray<string> findings) => reading.NotAssessed.Any(g =>
        g.Subject == subject && g.IsNotAssessable && findings.All(f => g.Findings.Contains(f)));

    private string GapLine(NotAssessed gap)
    {
        var findings = string.Join(", ", gap.Findings.Select(f => decided.TitleOf(gap.Subject, f)));
        if (gap.Subject == Subject.Study.Key) return $"{(gap.IsNotAssessable ? "Could not be told" : "Not stated")}: {findings}.";
        return gap.IsNotAssessable
            ? $"Not assessable: {TitleOf(gap.Subject)} ({findings})."
            : $"Not assessed: {TitleOf(gap.Subject)} ({findings}).";
    }
}
