using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;

namespace FindingRules.Drill;

/// <summary>Something in a case that a question can be asked about.</summary>
/// <param name="Theme">What it is about, so that a session does not ask one thing again and again.</param>
/// <param name="Field">The region of the body and the sort of question, so that a session goes about.</param>
/// <param name="IsWhole">The case is a whole study and not one structure.</param>
internal sealed record Spot(Case Case, DrillSort Sort, Claim Right, string Text, string Key, string Theme, string Field, bool IsWhole);

/// <summary>The places of a case at which there is something to ask.</summary>
internal static class Spots
{
    private const int WholeStudy = 3;
    public const string NotYetText = "None of these can be said yet: something has to be looked at first.";

    public static IEnumerable<Spot> Of(CaseView view)
    {
        // A note says that the study was not taken as it reads; a conflict has no right answer.
        if (!view.Reading.Notes.IsEmpty || !view.Reading.Conflicts.IsEmpty) return [];
        return [.. Impressions(view), .. Unsaid(view), .. Steps(view), .. Looks(view)];
    }

    private static IEnumerable<Spot> Impressions(CaseView view) =>
        from s in view.Reading.Suggestions
        let subject = view.SubjectOf(s.Subject)
        let topic = view.Pack.Pack.Symbols.Topics[s.Topic]
        let rules = By(view, s.Rules.Select(r => r.Id), [subject.Key])
        let say = new Say(topic, topic.Find(s.Value)!, subject, rules)
        select Make(view, DrillSort.Impression, say, s.Text, $"{subject.Key}\n{topic.Name}", topic.Name);

    /// <summary>The other options are the other answers of the topic, so there have to be some.</summary>
    private static IEnumerable<Spot> Unsaid(CaseView view) =>
        from t in view.Outcome.Topics
        where t.Topic.Values.Count(v => v.Says is not null) > 1 && t.Status is TopicStatus.Held or TopicStatus.Open
        let rules = Waiting(view, t)
        where !rules.IsEmpty
        select Make(
            view, DrillSort.Impression, new NotYet(t.Topic, t.Subject, rules), NotYetText, $"{t.Subject.Key}\n{t.Topic.Name}",
            $"{t.Topic.Name} not yet");

    /// <summary>The rules that withhold the topic or are open, of those of which something was sent.</summary>
    private static ImmutableArray<(Rule, Subject)> Waiting(CaseView view, TopicOutcome topic)
    {
        var here = view.Outcome.Rules.Where(r => r.Subject == topic.Subject).ToList();
        var holders = here.Where(r => r.Standing == Standing.Stands && r.Rule.Holds.Any(h => h.Topic == topic.Topic));
        var open = here.Where(r => r.Rule.Topics.Any(c => c.Topic == topic.Topic) || r.Rule.Holds.Any(h => h.Topic == topic.Topic))
            .Where(r => view.Reading.Unknown.Any(u => u.Rule.Id == r.Rule.Id && u.Subject == topic.Subject.Key));
        var found = topic.Status == TopicStatus.Held ? holders : open;
        return [.. found.Select(r => (r.Rule, r.Subject)).Distinct()];
    }

    private static IEnumerable<Spot> Steps(CaseView view) =>
        from s in view.Reading.NextSteps
        where !s.IsDone && view.Reading.NextSteps.Count(o => o.Step == s.Step) == 1
        let rules = By(view, s.Rules.Select(r => r.Id), s.Subjects)
        where !rules.IsEmpty
        select Make(view, DrillSort.NextStep, new TakeStep(s.Step, rules), s.Text, s.Step, s.Step);

    private static IEnumerable<Spot> Looks(CaseView view)
    {
        if (view.Reading.AskNext is not [var first, ..]) yield break;
        var subject = view.SubjectOf(first.Subject);
        if (view.FindingOf(subject, first.Finding) is not { } finding) yield break;
        var text = LookText(subject, finding.Title);
        var waiting = view.Reading.Unknown.Where(u => u.Missing.Any(m => m.Subject == first.Subject && m.Finding == first.Finding));
        var rules = waiting.SelectMany(u => view.Outcome.Rules.Where(r => r.Rule.Id == u.Rule.Id && r.Subject.Key == u.Subject));
        var look = new LookAt(subject, finding.Name, [.. rules.Select(r => (r.Rule, r.Subject))]);
        yield return Make(view, DrillSort.LookNext, look, text, "look", $"look {finding.Name}");
    }

    public static string LookText(Subject subject, string finding) =>
        subject.Structure is null ? $"{Sheet.Capital(finding)}." : $"{Sheet.Capital(finding)} of the {subject.Title}.";

    private static ImmutableArray<(Rule, Subject)> By(CaseView view, IEnumerable<string> rules, ImmutableArray<string> subjects)
    {
        var ids = rules.ToHashSet(StringComparer.Ordinal);
        return
        [
            .. view.Outcome.Rules.Where(r => ids.Contains(r.Rule.Id) && subjects.Contains(r.Subject.Key) && r.Standing == Standing.Stands)
                .Select(r => (r.Rule, r.Subject)),
        ];
    }

    private static string Region(CaseView view, Claim right)
    {
        var at = right is Say say ? say.Subject : right is NotYet not ? not.Subject : right.By.Select(b => b.Subject).FirstOrDefault();
        return (at?.Structure ?? view.Study.Subjects.Select(s => s.Structure).FirstOrDefault())?.Region ?? "";
    }

    private static Spot Make(CaseView view, DrillSort sort, Claim right, string text, string about, string theme) => new(
        view.Case, sort, right, text, QuestionId.KeyOf(view.Pack.Pack.Name, view.Case.Id, sort.ToString(), about), theme,
        $"{Region(view, right)} {(right is NotYet ? "not yet" : sort.ToString())}",
        view.Study.Subjects.Length >= WholeStudy || !view.Study.Protocols.IsEmpty);
}
