using FindingRules.Model.Explanations;
using FindingRules.Model.Messages.Rendering;

namespace FindingRules.Explaining;

/// <summary>Missing findings with what each answer would lead to.</summary>
internal static class NextQuestionText
{
    private const int FewLines = 4;

    public static void Write(Outline page, Explanation explanation)
    {
        page.Heading($"What the missing findings of study {Printable.Of(explanation.Study)} would lead to, the weightiest first");
        if (explanation.AskNext.IsEmpty) page.Line(1, "Nothing is missing that would settle anything.");
        foreach (var (question, i) in explanation.AskNext.Select((q, i) => (q, i)))
        {
            page.Heading($"{i + 1}. {question.Title}{(question.Subject == "study" ? "" : $" of the {question.SubjectTitle}")}");
            foreach (var answer in question.Answers) Write(page, answer);
        }
    }

    private static void Write(Outline page, Answer answer)
    {
        page.Line(1, $"If {answer.Range}:");
        foreach (var said in answer.Said.Take(FewLines)) page.Line(2, $"it says: {said}");
        if (answer.Said.Length > FewLines) page.Line(2, $"and {answer.Said.Length - FewLines} more");
        foreach (var gone in answer.RuledOut.Take(FewLines)) page.Line(2, $"it rules out: {gone}");
        if (answer.RuledOut.Length > FewLines) page.Line(2, $"and {answer.RuledOut.Length - FewLines} more are ruled out");
        if (answer.Said.IsEmpty && answer.RuledOut.IsEmpty) page.Line(2, "nothing is settled by it alone");
    }
}
