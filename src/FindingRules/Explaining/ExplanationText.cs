using FindingRules.Model.Explanations;
using FindingRules.Model.Messages.Rendering;

namespace FindingRules.Explaining;

/// <summary>An explanation as a colleague would give it.</summary>
public static class ExplanationText
{
    private const int Width = 100;

    /// <param name="sort">What was asked: where nothing is missing, or nothing is said, that is said instead.</param>
    public static void Write(TextWriter to, Explanation explanation, QuestionSort sort)
    {
        var page = new Outline(to, Width);
        var proofs = new ProofText(page, explanation);
        switch (sort)
        {
            case QuestionSort.Trace: Lines(page, proofs, explanation); break;
            case QuestionSort.WhatIf: WhatIf(page, explanation); break;
            case QuestionSort.AskNext: NextQuestionText.Write(page, explanation); break;
            default: Asked(page, proofs, explanation); break;
        }
        page.Heading($"Pack {explanation.Pack.Name} {explanation.Pack.Version}; engine {explanation.Engine}");
        page.Line(0, explanation.Notice.ReplaceLineEndings(" "));
    }

    private static void Lines(Outline page, ProofText proofs, Explanation explanation)
    {
        page.Heading($"Why the reading of study {Printable.Of(explanation.Study)} says what it says");
        if (explanation.Lines.IsEmpty) page.Line(1, "It suggests nothing and warns of nothing; `--ask-next` says what is still open.");
        foreach (var line in explanation.Lines)
        {
            page.Heading($"{Lead(line.Sort)}{line.Text}");
            foreach (var by in line.By) proofs.Write(by, 1);
        }
    }

    private static void Asked(Outline page, ProofText proofs, Explanation explanation)
    {
        foreach (var key in explanation.Asked)
        {
            page.Heading($"{key.Rule} for the {explanation.Find(key)!.SubjectTitle} in study {Printable.Of(explanation.Study)}");
            foreach (var line in explanation.Lines.Where(l => l.By.Contains(key)))
                page.Line(1, $"The reading says because of it: {line.Text}");
            if (explanation.WhyNot.FirstOrDefault(w => w.Key == key) is { } whyNot)
            {
                new ChangeText(page, explanation).Write(whyNot, 1);
                page.Line(1, "The whole rule:");
            }
            proofs.Write(key, 1);
        }
    }

    private static void WhatIf(Outline page, Explanation explanation)
    {
        page.Heading($"What would take back what the reading of study {Printable.Of(explanation.Study)} says");
        if (explanation.WhatIf.IsEmpty) page.Line(1, "It suggests nothing, so there is nothing to take back.");
        foreach (var whatIf in explanation.WhatIf)
        {
            page.Heading($"{Lead(whatIf.Line.Sort)}{whatIf.Line.Text}");
            var asked = whatIf.Line.Sort == "next-step" ? $"Next: {whatIf.Line.Text}" : whatIf.Line.Text;
            new ChangeText(page, explanation, asked).Write(whatIf, 1);
        }
    }

    private static string Lead(string sort) => sort switch
    {
        "next-step" => "Next: ",
        "done-step" => "Done already: ",
        "caution" => "Caution: ",
        _ => "",
    };
}
