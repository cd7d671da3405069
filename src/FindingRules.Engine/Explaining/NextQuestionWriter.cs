using FindingRules.Engine.Asking;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Explaining.Changing;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Explanations;
using FindingRules.Model.Packs;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Explaining;

/// <summary>For each missing finding, in the order of the reading, what each answer would lead to.</summary>
internal sealed class NextQuestionWriter(Decided decided, WayWriter ways)
{
    private readonly Examination _examination = decided.Examination;
    private readonly Questioner _questioner = new(decided);
    private readonly WordingFiller _filler = new(decided.Examination);

    public NextQuestion Write(Weighed weighed)
    {
        var subject = _examination[weighed.Index].Subject;
        return new NextQuestion(
            subject.Key, subject.Title, weighed.Finding.Name, weighed.Finding.Title,
            [
                .. Enum.GetValues<Weight>().Select(w => (Weight: w, Settled: weighed.Worth.Of(w))).Where(w => !w.Settled.IsZero)
                    .Select(w => new Share(Weights.WordOf(w.Weight), Fraction(w.Settled))),
            ],
            [.. _questioner.AnswersOf(weighed.Index, weighed.Finding).Select(cell => Answer(weighed, cell))]);
    }

    private Answer Answer(Weighed weighed, Cell cell)
    {
        var slot = new FindingSlot(false, _examination[weighed.Index].Subject, weighed.Finding);
        var (said, _) = ways.Differences([(slot, cell)]);
        var ruledOut = _questioner.Settled(weighed.Index, weighed.Finding, cell)
            .Where(s => s.State == Truth.False).Select(s => WordsOf(s.Consequence)).Distinct().Order(StringComparer.Ordinal);
        return new Answer(cell.To, cell.Range, said, [.. ruledOut]);
    }

    private string WordsOf(Consequence consequence)
    {
        var instance = _examination[consequence.Index];
        return consequence.Conclusion switch
        {
            NextStepConclusion next => $"Next: {_filler.Fill(next.Step.Says, consequence.Index)}",
            EvaluateConclusion evaluate =>
                $"Next: {_filler.Fill(evaluate.Step.Says, DoneSteps.Target(_examination, evaluate.Step, consequence.Index))}",
            CautionConclusion caution => $"Caution: {_filler.Fill(caution.Caution.Says, consequence.Index)}",
            _ => $"{TopicOf(instance, consequence).Title}: {TopicOf(instance, consequence).Values[consequence.Value].Title}",
        };
    }

    private static Topic TopicOf(Instance instance, Consequence consequence) => instance.Plan.Topics[consequence.Topic].Topic;

    private static string Fraction(Model.Quantities.Rational value) =>
        value.Denominator.IsOne ? value.Numerator.ToString() : $"{value.Numerator}/{value.Denominator}";
}
