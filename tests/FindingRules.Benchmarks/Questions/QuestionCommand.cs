using System.Globalization;
using FindingRules.Benchmarks.Measuring;
using FindingRules.Explaining;
using FindingRules.Model.Text;
using FindingRules.Testing;

namespace FindingRules.Benchmarks.Questions;

/// <summary>How long explanations take beside the reading that they explain, from JSON text on.</summary>
internal static class QuestionCommand
{
    public static int Run()
    {
        Console.WriteLine("| pack | question | ms | of the reading |");
        Console.WriteLine("|---|---|---|---|");
        Measure("500 rules", CompiledPack.Load(LargePack.Files(500)).Pack!, new SourceText("study.json", LargePack.Study));
        var study = Repository.PathOf("tests", "FindingRules.Benchmarks", "Http", "study.json");
        Measure(
            "the shipped pack", PackFolder.Load(Repository.PathOf("rules", "msk-ultrasound")).Pack!,
            new SourceText("study.json", File.ReadAllText(study)));
        return 0;
    }

    private static void Measure(string name, CompiledPack pack, SourceText study)
    {
        var trace = pack.Explain(study, new Question(QuestionSort.Trace)).Explanation!;
        var (rule, subject) = (trace.Lines[0].By[0].Rule, trace.Lines[0].By[0].Subject);
        var outcome = pack.ReadWhole(study).Decided!.Outcome;
        var silent = outcome.Rules.First(r => r.Truth == Model.Truths.Truth.False && r.Rule.Topics.Any());
        (string Name, Action Ask)[] questions =
        [
            ("reading", () => pack.Read(study)),
            ("trace", Asking(new Question(QuestionSort.Trace))),
            ("why, of a rule that stands", Asking(new Question(QuestionSort.Why, rule, subject))),
            ("why, of a rule that is false", Asking(new Question(QuestionSort.Why, silent.Rule.Id, silent.Subject.Key))),
            ("why not, with the smallest changes", Asking(new Question(QuestionSort.WhyNot, silent.Rule.Id, silent.Subject.Key))),
        ];
        var times = Fastest.Of([.. questions.Select(q => q.Ask)], TimeSpan.FromMilliseconds(500));
        for (var i = 0; i < times.Length; i++)
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"| {name} | {questions[i].Name} | {times[i] / 1e6:0.000} | {times[i] / times[0]:0.0} |"));
        Action Asking(Question question) => () =>
        {
            if (pack.Explain(study, question).Explanation is null) throw new InvalidOperationException($"{question} has no answer.");
        };
    }
}
