using System.Collections.Immutable;
using FindingRules.Model.Explanations;
using FindingRules.Model.Messages.Rendering;

namespace FindingRules.Explaining;

/// <summary>Missing findings with what each answer would lead to; answers that lead to the same are told together.</summary>
internal static class NextQuestionText
{
    private const int FewQuestions = 8;
    private const int FewLines = 4;
    private const int FewNames = 2;
    private const int ManyAnswers = 3;

    public static void Write(Outline page, Explanation explanation)
    {
        page.Heading($"What the missing findings of study {Printable.Of(explanation.Study)} would lead to, the weightiest first");
        if (explanation.AskNext.IsEmpty) page.Line(1, "Nothing is missing that would settle anything.");
        foreach (var (question, i) in explanation.AskNext.Take(FewQuestions).Select((q, i) => (q, i)))
        {
            page.Heading($"{i + 1}. {Title(question)}");
            Answers(page, question);
        }
        if (explanation.AskNext.Length <= FewQuestions) return;
        page.Heading($"And, with less weight: {string.Join("; ", explanation.AskNext.Skip(FewQuestions).Select(Title))}.");
    }

    private static string Title(NextQuestion question) =>
        $"{question.Title}{(question.Subject == "study" ? "" : $" of the {question.SubjectTitle}")}";

    private static void Answers(Outline page, NextQuestion question)
    {
        // What is said makes answers alike, and where nothing is said, what can no longer be.
        var alike = question.Answers.GroupBy(a => string.Join('\n', a.Said.IsEmpty ? a.RuledOut : a.Said))
            .Select(g => g.ToImmutableArray()).ToList();
        var most = alike.Where(g => g.Length >= ManyAnswers).OrderByDescending(g => g.Length).Take(alike.Count > 1 ? 1 : 0).ToList();
        foreach (var group in alike.Except(most)) Write(page, $"If {string.Join("; or ", group.Select(a => a.Range))}:", group);
        foreach (var group in most) Write(page, "If anything else:", group);
    }

    private static void Write(Outline page, string when, ImmutableArray<Answer> answers)
    {
        page.Line(1, when);
        foreach (var said in answers[0].Said.Take(FewLines)) page.Line(2, $"It would say: {said}");
        var more = answers[0].Said.Length - FewLines;
        if (more > 0) page.Line(2, $"It would say {ChangeText.Lines(more)} more.");
        var gone = answers.Select(a => a.RuledOut.AsEnumerable()).Aggregate((a, b) => a.Intersect(b)).ToList();
        if (gone.Count > 0) page.Line(2, RuledOut(gone));
        else if (answers[0].Said.IsEmpty) page.Line(2, "Nothing is settled by it alone.");
    }

    /// <summary>Steps and impressions have names; cautions that cannot come are only counted.</summary>
    private static string RuledOut(List<string> gone)
    {
        var named = gone.Where(g => !g.StartsWith("Caution: ", StringComparison.Ordinal))
            .OrderBy(g => !g.StartsWith("Next: ", StringComparison.Ordinal)).Take(FewNames).Select(g => g.TrimEnd('.')).ToList();
        var more = gone.Count - named.Count;
        var others = named.Count == 0 ? ChangeText.Lines(more) : more == 0 ? "" : $"; and {more} more";
        return $"It would rule out {string.Join("; ", named)}{others}.";
    }
}
