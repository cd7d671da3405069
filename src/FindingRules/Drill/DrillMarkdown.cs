using System.Collections.Immutable;
using System.Text;

namespace FindingRules.Drill;

/// <summary>A sheet of questions to print, the answers after all of them.</summary>
public static class DrillMarkdown
{
    public static string Of(DrillSheet sheet)
    {
        var text = new StringBuilder();
        text.Append($"# Questions from the pack {sheet.Pack.Name} {sheet.Pack.Version}\n\n> {sheet.Notice}\n\n");
        text.Append($"Seed {sheet.Seed}; pack digest {sheet.Pack.TextDigest}.\n");
        foreach (var (question, number) in sheet.Questions.Select((q, i) => (q, i + 1))) Append(text, question, number);
        if (sheet.Answers is { } answers) Append(text, sheet.Questions, answers, sheet.Notice);
        return text.ToString();
    }

    private static void Append(StringBuilder text, DrillQuestion question, int number)
    {
        text.Append($"\n## Question {number}\n\nAn invented case.\n");
        foreach (var line in question.Examination) text.Append($"{line}.\n");
        foreach (var subject in question.Subjects)
        {
            text.Append($"\n**{subject.Title}**\n\n");
            foreach (var finding in subject.Findings) text.Append($"- {finding.Mark}) {finding.Title}: {finding.Value}\n");
        }
        text.Append($"\nWhat is not listed was not assessed.\n\n**{question.Asks}**\n\n");
        foreach (var option in question.Options) text.Append($"{option.Number}. {option.Text}\n");
        text.Append("\nWhich findings decide it?\n");
    }

    private static void Append(
        StringBuilder text, ImmutableArray<DrillQuestion> questions, ImmutableArray<DrillAnswer> answers, string notice)
    {
        text.Append($"\n# Answers\n\n> {notice}\n");
        foreach (var (answer, number) in answers.Select((a, i) => (a, i + 1)))
        {
            text.Append($"\n## Answer {number}\n\n{answer.Right}. {answer.RightText}\n");
            if (!answer.RestsOn.IsEmpty) text.Append($"\nIt rests on: {Lines(questions[number - 1], answer.RestsOn)}.\n");
            if (!answer.Rules.IsEmpty) text.Append($"\nBy {string.Join(", ", answer.Rules)}. {string.Join(" ", answer.Because)}\n");
        }
    }

    private static string Lines(DrillQuestion question, ImmutableArray<string> marks) => string.Join("; ", question.Subjects
        .SelectMany(s => s.Findings).Where(f => marks.Contains(f.Mark)).Select(f => $"{f.Mark}) {f.Title}: {f.Value}"));
}
