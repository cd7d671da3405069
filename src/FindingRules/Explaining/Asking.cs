using FindingRules.Engine.Explaining;
using FindingRules.Model.Explanations;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Text;

namespace FindingRules.Explaining;

/// <summary>A question with its names found in the pack and the study, answered; or the message that says what was not found.</summary>
internal static class Asking
{
    public static Explanation? Of(CompiledPack pack, Study study, Question question, MessageBag messages)
    {
        var explainer = new Explainer(pack.Network, study);
        if (question.Sort is QuestionSort.Why or QuestionSort.WhyNot)
        {
            if (RuleOf(pack.Pack, question, messages) is not { } rule) return null;
            if (!TrySubject(explainer, rule, question, out var subject, messages)) return null;
            return question.Sort == QuestionSort.Why ? explainer.Why(rule, subject) : explainer.WhyNot(rule, subject);
        }
        if ((question.Rule ?? question.Subject) is { } idle)
        {
            messages.Add(ExplanationMessages.NothingAskedOfRule(Words(idle), idle));
            return null;
        }
        return question.Sort switch
        {
            QuestionSort.WhatIf => explainer.WhatIf(),
            QuestionSort.AskNext => explainer.AskNext(),
            _ => explainer.Trace(),
        };
    }

    private static Rule? RuleOf(Pack pack, Question question, MessageBag messages)
    {
        if (question.Rule is not { } id)
        {
            messages.Add(ExplanationMessages.RuleNotSaid(Words("")));
            return null;
        }
        var at = Words(id);
        var rule = pack.Rules.FirstOrDefault(r => r.Id == id);
        var withdrawal = pack.Withdrawn.FirstOrDefault(w => w.Rule == id);
        if (withdrawal is not null) messages.Add(ExplanationMessages.RuleWithdrawn(at, id, withdrawal.On, withdrawal.Because));
        else if (rule is null) messages.Add(ExplanationMessages.UnknownRule(at, id, pack.Name, [.. pack.Rules.Select(r => r.Id)]));
        return withdrawal is null ? rule : null;
    }

    /// <summary>Null with success: every subject that the rule is for.</summary>
    private static bool TrySubject(Explainer explainer, Rule rule, Question question, out Subject? subject, MessageBag messages)
    {
        subject = null;
        var subjects = explainer.SubjectsOf(rule);
        if (question.Subject is not { } key)
        {
            if (subjects.IsEmpty) messages.Add(ExplanationMessages.NothingForRule(Words(rule.Id), rule.Id, rule.Scope.Written));
            return !subjects.IsEmpty;
        }
        subject = subjects.FirstOrDefault(s => s.Key == key);
        if (subject is null)
            messages.Add(ExplanationMessages.NoSuchSubject(Words(key), key, rule.Id, rule.Scope.Written, [.. subjects.Select(s => s.Key)]));
        return subject is not null;
    }

    private static Location Words(string asked) => new SourceText("question", asked).Whole;
}
