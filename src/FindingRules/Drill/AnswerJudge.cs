using System.Collections.Immutable;
using FindingRules.Model.Explanations;

namespace FindingRules.Drill;

/// <summary>Judges an answer by asking the engine: with a finding forgotten, and with the findings that a wrong option needs.</summary>
internal sealed class AnswerJudge
{
    private readonly Made _made;
    private readonly ImmutableArray<SheetItem> _essential;
    private readonly ImmutableArray<SheetItem> _restsOn;

    public AnswerJudge(Made made)
    {
        _made = made;
        var view = made.View;
        var known = made.Spot.Sort == DrillSort.LookNext ? [] : made.Sheet.Items.Where(i => i.IsKnown);
        _essential = [.. known.Where(i => !view.IsRightIn(made.Spot.Right, Forgetting.Of(view.Study, i)))];
        var seen = made.Spot.Right.By
            .SelectMany(b => ProofWalk.RestsOn(view.Why(b.Rule, b.Subject), new ProofKey(b.Rule.Id, b.Subject.Key)))
            .Select(v => made.Sheet.Find(v.Subject, v.Finding)).OfType<SheetItem>();
        if (made.Spot.Right is LookAt look) seen = made.Sheet.Find(look.Subject.Key, look.Finding) is { } wanted ? [wanted] : [];
        _restsOn = [.. seen.Concat(_essential).Distinct().OrderBy(i => made.Sheet.Items.IndexOf(i))];
    }

    public DrillAnswer Answer() => new(
        _made.Question.Id, _made.Right, _made.Spot.Text, Marks(_restsOn), Marks(_essential),
        [.. _made.Spot.Right.By.Select(b => b.Rule.Id).Distinct()], [.. _made.Spot.Right.By.Select(b => b.Rule.Because).Distinct()]);

    /// <param name="deciding">Marks of the findings that the learner says decided it; none where no reason was given.</param>
    public DrillJudgement Judge(int choice, ImmutableArray<string> deciding)
    {
        var isRight = choice == _made.Right;
        var overlooked = isRight ? OfReason(deciding) : OfChoice(_made.Claims[choice - 1]);
        var verdict = !isRight ? DrillVerdict.Wrong
            : overlooked.Any(o => o.Sort == "no-part") ? DrillVerdict.WrongReason
            : overlooked.IsEmpty ? DrillVerdict.Right
            : DrillVerdict.ReasonIncomplete;
        return new DrillJudgement(
            _made.Question.Id, verdict, choice, _made.Right, _made.Spot.Text, Marks(_restsOn), Marks(_essential), overlooked,
            [.. Traces(isRight ? null : _made.Claims[choice - 1])], _made.View.Reading.Notice);
    }

    private ImmutableArray<DrillOverlooked> OfReason(ImmutableArray<string> deciding)
    {
        if (deciding.IsEmpty || _made.Spot.Sort == DrillSort.LookNext) return [];
        var named = _made.Sheet.Items.Where(i => deciding.Contains(i.Mark)).ToList();
        var idle = named.Except(_restsOn).Select(i => Of(i, "no-part", $"{Line(i)}: it plays no part in this answer"));
        var needed = _essential.Except(named).Select(i => Of(i, "essential", $"{Line(i)}: without it, this answer would not hold"));
        return [.. idle, .. needed];
    }

    private ImmutableArray<DrillOverlooked> OfChoice(Claim chosen)
    {
        if (_made.Spot.Right is LookAt look)
            return [.. _restsOn.Select(i => Of(i, "unknown", $"{Line(i)}: {LeadsTo() ?? Waiting(look)}"))];
        var against = chosen is NotYet || chosen.By.IsEmpty ? [] : Needs(chosen).ToList();
        var needed = _essential.Where(i => !against.Exists(a => a.Mark == i.Mark)).Select(i =>
            Of(i, "essential", $"{Line(i)}: the right answer rests on it and would not hold without it"));
        var open = _restsOn.Where(i => !i.IsKnown && !against.Exists(a => a.Mark == i.Mark));
        var unknown = _made.Spot.Right is not NotYet ? [] : open.Select(i =>
            Of(i, "unknown", $"{Line(i)}: as long as it is, nothing can be said"));
        return [.. against, .. unknown, .. needed];
    }

    /// <summary>The first thing that two of its answers would make the reading say.</summary>
    private string? LeadsTo()
    {
        var answers = _made.View.Explainer.AskNext().AskNext[0].Answers.Where(a => !a.Said.IsEmpty).Take(2).ToList();
        return answers.Count == 0 ? null : string.Join("; ", answers.Select(a => $"if {a.Range}, “{a.Said[0].TrimEnd('.')}”"));
    }

    private static string Waiting(LookAt look)
    {
        var rules = look.By.Select(b => b.Rule.Id).Distinct().ToList();
        return rules.Count == 1 ? $"{rules[0]} waits for it" : $"{rules.Count} rules wait for it, such as {rules[0]}";
    }

    /// <summary>The smallest changes after which the chosen option would have been right, as the engine tried them.</summary>
    private IEnumerable<DrillOverlooked> Needs(Claim chosen)
    {
        var (rule, subject) = chosen.By[0];
        var ways = _made.View.Explainer.WhyNot(rule, subject).WhyNot.SelectMany(w => w.Ways).ToList();
        return ways.Count == 0 ? [] : ways.MinBy(w => w.Changes.Length)!.Changes.Select(Need);
    }

    private DrillOverlooked Need(Change change)
    {
        var mark = _made.Sheet.Find(change.Subject, change.Finding)?.Mark;
        var whose = change.Subject == "study" ? "" : $" of the {change.SubjectTitle}";
        var text = change.Was is { } was
            ? $"{change.Title}{whose}: it is {was}, and for your answer it would have to be {change.Range}"
            : $"{change.Title}{whose}: for your answer it would have to be {change.Range}, and it {Unknown(change.Origin)}";
        return new DrillOverlooked(
            change.Was is null ? "missing" : "contradicts", mark, change.Subject, change.Finding, change.Was, change.To, text);
    }

    private static string Unknown(string origin) => origin == "not-assessable" ? "could not be assessed" : "was not assessed";

    private IEnumerable<Explanation> Traces(Claim? chosen)
    {
        if (_made.Spot.Right.By is [var first, ..]) yield return _made.View.Explainer.Why(first.Rule, first.Subject);
        if (chosen is not (null or NotYet) && chosen.By is [var near, ..])
            yield return _made.View.Explainer.WhyNot(near.Rule, near.Subject);
    }

    private static DrillOverlooked Of(SheetItem item, string sort, string text) =>
        new(sort, item.Mark, item.Subject, item.Finding, item.IsKnown ? item.Value : null, null, text);

    private static string Line(SheetItem item) =>
        item.Subject == "study" ? $"{item.Title} ({item.Value})" : $"{item.Title} of the {item.SubjectTitle} ({item.Value})";

    private static ImmutableArray<string> Marks(IEnumerable<SheetItem> items) => [.. items.Select(i => i.Mark)];
}
