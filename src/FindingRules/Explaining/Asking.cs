using System.Collections.Immutable;
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
            var subjects = Subjects(explainer, pack.Pack, rule, question, messages);
            if (subjects.IsEmpty) return null;
            return question.Sort == QuestionSort.Why ? explainer.Why(rule, subjects) : explainer.WhyNot(rule, subjects);
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

    /// <summary>Where none is named, every subject that the rule is for; empty with a message.</summary>
    private static ImmutableArray<Subject> Subjects(
        Explainer explainer, Pack pack, Rule rule, Question question, MessageBag messages)
    {
        var all = explainer.SubjectsOf(rule);
        if (question.Subject is not { } name)
        {
            if (all.IsEmpty) messages.Add(ExplanationMessages.NothingForRule(Words(rule.Id), rule.Id, rule.Scope.Written));
            return all;
        }
        var found = SubjectName.Find(name, all);
        if (found.IsEmpty)
            messages.Add(ExplanationMessages.NoSuchSubject(
                Words(name), name, rule.Id, rule.Scope.Written, [.. all.Select(s => s.Key)],
                !SubjectName.Find(name, explainer.Subjects).IsEmpty, SubjectName.IsKnown(name, pack.Vocabulary)));
        return found;
    }

    private static Location Words(string asked) => new SourceText("question", asked).Whole;
}
