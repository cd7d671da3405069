using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Drill;

/// <summary>Options that are wrong and instructive: what rules would have said that nearly did, the nearest first.</summary>
internal static class NearMisses
{
    public static IEnumerable<(Claim Claim, string Text)> Of(CaseView view, Spot spot, SeededOrder order) => spot.Right switch
    {
        Say say => Impressions(view, say.Topic, say.Subject, order),
        NotYet notYet => Impressions(view, notYet.Topic, notYet.Subject, order)
            .Where(o => o.Item1 is Say near && near.Topic == notYet.Topic && near.Subject == notYet.Subject),
        TakeStep step => Steps(view, step, order),
        LookAt look => Looks(view, look, order),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static IEnumerable<(Claim, string)> Impressions(CaseView view, Topic topic, Subject subject, SeededOrder order) =>
        from rule in order.Shuffle(view.Outcome.Rules.Where(r => r.Subject.Whole == subject.Whole))
        from given in rule.Rule.Topics
        let claim = new Say(given.Topic, given.Value, rule.Subject, [(rule.Rule, rule.Subject)])
        where !view.IsRight(claim)
        let text = view.Wording.Impression(given.Topic, given.Value, rule.Subject)
        where text is not null
        orderby given.Topic != topic || rule.Subject != subject, view.Wording.Distance(rule.Rule, rule.Subject)
        select ((Claim)claim, text);

    private static IEnumerable<(Claim, string)> Steps(CaseView view, TakeStep right, SeededOrder order)
    {
        var known = view.Reading.NextSteps.Select(s => s.Step).ToHashSet(StringComparer.Ordinal);
        var subjects = right.By.Select(b => b.Subject.Whole).ToHashSet();
        return
            from rule in order.Shuffle(view.Outcome.Rules)
            from conclusion in rule.Rule.Conclusions
            let step = view.Wording.Step(conclusion, rule.Subject)
            where step is not null && !known.Contains(step.Value.Step)
            orderby view.Wording.Distance(rule.Rule, rule.Subject), !subjects.Contains(rule.Subject.Whole)
            select ((Claim)new TakeStep(step.Value.Step, [(rule.Rule, rule.Subject)]), step.Value.Text);
    }

    /// <summary>Findings that are missing as well, and that nothing still open waits for.</summary>
    private static IEnumerable<(Claim, string)> Looks(CaseView view, LookAt right, SeededOrder order)
    {
        var sent = view.Study.Subjects.FirstOrDefault(s => s.Structure == right.Subject.Structure && s.Side == right.Subject.Side);
        if (sent is { IsNormal: true } or { IsNotAssessable: true }) return [];
        return
            from at in Subjects(view, right.Subject)
            from finding in order.Shuffle((at.Structure?.Kind.Findings ?? view.Pack.Pack.Vocabulary.StudyFacts).Values)
            where !IsSent(view.Study, at, finding) && !IsAwaited(view, at, finding)
            select ((Claim)new LookAt(at, finding.Name, []), Spots.LookText(at, finding.Title));
    }

    /// <summary>Beside a fact of the study stand findings of what was examined: facts of other regions would be no choice.</summary>
    private static IEnumerable<Subject> Subjects(CaseView view, Subject right)
    {
        if (right.Structure is not null) return [right];
        var examined = view.Study.Subjects.Where(s => s is { IsNormal: false, IsNotAssessable: false, Lesions.IsEmpty: true });
        return [.. examined.Select(s => new Subject(s.Structure, s.Side, null)), right];
    }

    private static bool IsAwaited(CaseView view, Subject subject, Finding finding) =>
        view.Reading.AskNext.Any(m => m.Subject == subject.Key && m.Finding == finding.Name)
        || view.Reading.Unknown.Any(u => u.Missing.Any(m => m.Subject == subject.Key && m.Finding == finding.Name));

    private static bool IsSent(Study study, Subject subject, Finding finding)
    {
        if (subject.Structure is null) return study.Facts.Find(finding.Name) is not null;
        return study.Subjects.Where(s => s.Structure == subject.Structure && s.Side == subject.Side).Any(s =>
            s.Findings.Find(finding.Name) is not null || s.Lesions.Any(l => l.Findings.Find(finding.Name) is not null));
    }
}
