using CsCheck;
using FindingRules.Engine.Asking;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reporting;
using FindingRules.Testing.Generators;
using Xunit;

namespace FindingRules.Tests.Engine.Asking;

/// <summary>What is asked next is what settles the weightiest consequences, and asking leaves everything as it was.</summary>
public sealed class AskNextTests
{
    [Fact]
    public void The_order_equals_brute_force() => Sample.Any.Sample(
        sample =>
        {
            var network = NetworkCompiler.Compile(sample.Pack);
            var asked = Evaluator.Evaluate(network, sample.Study).AskNext;
            var expected = new BruteForce(sample, Evaluator.Examine(network, sample.Study)).Order(asked.Reverse());
            Assert.Equal(expected, asked.Select(m => (m.Subject, m.Finding)));
        },
        iter: 100, print: s => s.ToString());

    [Fact]
    public void The_worth_of_each_finding_equals_brute_force() => Sample.Any.Sample(
        sample =>
        {
            var examination = Evaluator.Examine(NetworkCompiler.Compile(sample.Pack), sample.Study);
            var decided = new Decided(examination, sample.Study);
            var brute = new BruteForce(sample, examination);
            foreach (var weighed in AskNextWriter.Weigh(decided, UndecidedWriter.Write(decided)).Take(4))
                Assert.Equal(brute.Worth(weighed.Missing), Enum.GetValues<Weight>().Select(weighed.Worth.Of));
        },
        iter: 60, print: s => s.ToString());

    [Fact]
    public void Supposing_an_answer_leaves_no_trace() => Sample.Any.Sample(
        sample =>
        {
            var examination = Evaluator.Examine(NetworkCompiler.Compile(sample.Pack), sample.Study);
            var before = StateOf(examination);
            var decided = new Decided(examination, sample.Study);
            AskNextWriter.Write(decided, UndecidedWriter.Write(decided));
            Assert.Equal(before, StateOf(examination));
        },
        iter: 60, print: s => s.ToString());

    [Fact]
    public void Samples_ask_for_findings_of_every_worth()
    {
        var sorts = new HashSet<Weight>();
        Sample.Any.Sample(
            sample =>
            {
                var examination = Evaluator.Examine(NetworkCompiler.Compile(sample.Pack), sample.Study);
                var decided = new Decided(examination, sample.Study);
                foreach (var weighed in AskNextWriter.Weigh(decided, UndecidedWriter.Write(decided)))
                    sorts.UnionWith(Enum.GetValues<Weight>().Where(w => !weighed.Worth.Of(w).IsZero));
            },
            iter: 80, threads: 1);
        Assert.All([Weight.StepSoon, Weight.RoutineStep, Weight.DefiniteImpression, Weight.Caution], sort => Assert.Contains(sort, sorts));
    }

    private static List<string> StateOf(Examination examination)
    {
        var states = new List<string>();
        for (var i = 0; i < examination.Count; i++)
        {
            if (!examination[i].IsPresent) continue;
            for (var r = 0; r < examination[i].Plan.Rules.Length; r++)
                states.Add($"{i} rule {r} {examination[i].StateOf(r).Truth} {examination[i].StateOf(r).Standing}");
            for (var t = 0; t < examination[i].Plan.Topics.Length; t++)
                states.Add($"{i} topic {t} {examination[i].TopicAt(t).Status} {examination[i].TopicAt(t).Value}");
            states.AddRange(examination[i].Values.Select((v, s) => $"{i} value {s} {v}"));
        }
        return states;
    }
}
