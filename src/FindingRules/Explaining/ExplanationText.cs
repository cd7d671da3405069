using FindingRules.Model.Explanations;
using FindingRules.Model.Messages.Rendering;

namespace FindingRules.Explaining;

/// <summary>An explanation as a colleague would give it.</summary>
public static class ExplanationText
{
    private const int Width = 100;

    public static void Write(TextWriter to, Explanation explanation)
    {
        var page = new Outline(to, Width);
        var proofs = new ProofText(page, explanation);
        if (explanation.Asked.IsEmpty) Lines(page, proofs, explanation);
        else Asked(page, proofs, explanation);
        page.Heading($"Pack {explanation.Pack.Name} {explanation.Pack.Version}; engine {explanation.Engine}");
        page.Line(0, explanation.Notice.ReplaceLineEndings(" "));
    }

    private static void Lines(Outline page, ProofText proofs, Explanation explanation)
    {
        page.Heading($"Why the reading of study {Printable.Of(explanation.Study)} says what it says");
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
            proofs.Write(key, 1);
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
