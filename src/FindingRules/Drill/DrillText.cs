using FindingRules.Explaining;

namespace FindingRules.Drill;

/// <summary>Questions and judgements for a terminal.</summary>
public static class DrillText
{
    private const int Width = 100;

    public static void Write(TextWriter to, DrillQuestion question)
    {
        var page = new Outline(to, Width);
        page.Line(0, "An invented case.");
        foreach (var line in question.Examination) page.Line(0, $"{line}.");
        foreach (var subject in question.Subjects)
        {
            page.Line(0, subject.Title);
            foreach (var finding in subject.Findings) page.Line(1, $"{finding.Mark}) {finding.Title}: {finding.Value}");
        }
        page.Line(0, "What is not listed was not assessed.");
        page.Heading(question.Asks);
        foreach (var option in question.Options) page.Line(1, $"{option.Number}. {option.Text}");
    }

    public static void Write(TextWriter to, DrillQuestion question, DrillJudgement judgement)
    {
        var page = new Outline(to, Width);
        page.Line(0, Lead(judgement));
        var isWrong = judgement.Verdict == DrillVerdict.Wrong;
        foreach (var overlooked in judgement.Overlooked.Where(o => !isWrong || o.Sort != "essential"))
            page.Line(1, $"{(overlooked.Mark is { } mark ? $"{mark}) " : "- ")}{overlooked.Text}.");
        if (!judgement.RestsOn.IsEmpty)
            page.Line(0, $"{(isWrong ? "The right answer" : "It")} rests on {string.Join(", ", judgement.RestsOn)}.");
        foreach (var trace in judgement.Traces) ExplanationText.WriteShort(page, trace);
    }

    private static string Lead(DrillJudgement judgement) => judgement.Verdict switch
    {
        DrillVerdict.Right => "Right.",
        DrillVerdict.ReasonIncomplete => "Right. Of what decides it, this was not named:",
        DrillVerdict.WrongReason => "Right, but for the wrong reason:",
        _ => $"Not right. The rules say {judgement.Right}: {judgement.RightText}"
            + (judgement.Overlooked.Any(o => o.Sort != "essential") ? " What was overlooked:" : ""),
    };
}
