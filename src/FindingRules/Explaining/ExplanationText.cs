using FindingRules.Model.Explanations;
using FindingRules.Model.Messages.Rendering;

namespace FindingRules.Explaining;

/// <summary>An explanation as a colleague would give it.</summary>
public static class ExplanationText
{
    private const int Width = 100;
    private const int DigestDigits = 12;
    private const int FewSubjects = 2;

    /// <param name="sort">What was asked: where nothing is missing, or nothing is said, that is said instead.</param>
    public static void Write(TextWriter to, Explanation explanation, QuestionSort sort)
    {
        var page = new Outline(to, Width);
        switch (sort)
        {
            case QuestionSort.Trace: Lines(page, explanation); break;
            case QuestionSort.WhyNot: WhyNot(page, explanation); break;
            case QuestionSort.WhatIf: WhatIf(page, explanation); break;
            case QuestionSort.AskNext: NextQuestionText.Write(page, explanation); break;
            default: Why(page, explanation); break;
        }
        var digest = explanation.Pack.MeaningDigest;
        page.Heading($"Pack {explanation.Pack.Name} {explanation.Pack.Version}, digest {digest[..Math.Min(DigestDigits, digest.Length)]}; "
            + $"engine {explanation.Engine}");
        page.Line(0, explanation.Notice.ReplaceLineEndings(" "));
    }

    /// <summary>Without what could have overruled or withheld, and without what would have to be different.</summary>
    internal static void WriteShort(Outline page, Explanation explanation)
    {
        var proofs = new ProofText(page, explanation, isShort: true);
        foreach (var key in explanation.Asked)
        {
            var whyNot = explanation.WhyNot.FirstOrDefault(w => w.Key == key);
            page.Heading(whyNot is null ? "Why:" : $"Why not your answer: {key.Rule} for the {explanation.Find(key)!.SubjectTitle}");
            if (whyNot is null) proofs.Write(key, 1);
            else new WhyNotText(page, explanation).Hindered(whyNot, 1);
        }
    }

    private static void Lines(Outline page, Explanation explanation)
    {
        page.Heading($"Why the reading of study {Printable.Of(explanation.Study)} says what it says");
        if (explanation.Lines.IsEmpty) page.Line(1, "It suggests nothing and warns of nothing; `--ask-next` says what is still open.");
        var proofs = new ProofText(page, explanation);
        foreach (var line in explanation.Lines)
        {
            page.Heading($"{Lead(line.Sort)}{line.Text}");
            foreach (var by in line.By) proofs.Write(by, 1);
        }
    }

    private static void Why(Outline page, Explanation explanation)
    {
        var proofs = new ProofText(page, explanation);
        foreach (var key in explanation.Asked)
        {
            Asked(page, explanation, key);
            foreach (var line in explanation.Lines.Where(l => l.By.Contains(key)))
                page.Line(1, $"The reading says because of it: {line.Text}");
            proofs.Write(key, 1);
        }
    }

    private static void WhyNot(Outline page, Explanation explanation)
    {
        var text = new WhyNotText(page, explanation);
        var all = WhyNotText.InOrder(explanation.WhyNot).ToList();
        foreach (var whyNot in all.Take(FewSubjects))
        {
            Asked(page, explanation, whyNot.Key);
            text.Write(whyNot, 1);
        }
        if (all.Count > FewSubjects) page.Heading("Of the others:");
        foreach (var whyNot in all.Skip(FewSubjects)) text.Brief(whyNot, 1);
        if (!explanation.WhyNot.All(w => w.Stands)) page.Heading(ChangeText.Limits);
        page.Line(0, $"Every part of the rule: `--why {explanation.Asked[0].Rule}`.");
    }

    private static void Asked(Outline page, Explanation explanation, ProofKey key) =>
        page.Heading($"{key.Rule} for the {explanation.Find(key)!.SubjectTitle} in study {Printable.Of(explanation.Study)}");

    private static void WhatIf(Outline page, Explanation explanation)
    {
        page.Heading($"What would take back what the reading of study {Printable.Of(explanation.Study)} says");
        if (explanation.WhatIf.IsEmpty) page.Line(1, "It says nothing, so there is nothing to take back.");
        var lines = new WhatIfText(page, explanation);
        foreach (var whatIf in explanation.WhatIf)
        {
            page.Heading($"{Lead(whatIf.Line.Sort)}{whatIf.Line.Text}");
            lines.Write(whatIf, 1);
        }
        if (!explanation.WhatIf.IsEmpty) page.Heading(ChangeText.Limits);
    }

    private static string Lead(string sort) => sort switch
    {
        "next-step" => "Next: ",
        "done-step" => "Done already: ",
        "caution" => "Caution: ",
        _ => "",
    };
}
