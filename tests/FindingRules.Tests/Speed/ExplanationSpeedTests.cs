using System.Diagnostics;
using FindingRules.Explaining;
using FindingRules.Model.Text;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Speed;

/// <summary>
/// An explanation costs what is explained, not what the pack holds. Measured in a release build on a pack of 500 rules: 0.5 ms
/// for a trace, 0.4 ms for one rule, half of each the reading of the study; a search for changes may take longer, by its
/// budget (results/engine.md of the benchmarks). The bounds here leave room for a busy machine without optimisation.
/// </summary>
public sealed class ExplanationSpeedTests
{
    private static readonly CompiledPack Large = CompiledPack.Load(LargePack.Files(500)).Pack!;
    private static readonly SourceText Study = new("study.json", LargePack.Study);

    [Fact]
    public void A_trace_of_500_rules_takes_milliseconds() => Assert.InRange(Best(new Question(QuestionSort.Trace)), 0, 30);

    [Fact]
    public void One_rule_of_500_takes_less_than_the_trace_of_all()
    {
        var line = Large.Explain(Study, new Question(QuestionSort.Trace)).Explanation!.Lines[0];
        var why = new Question(QuestionSort.Why, line.By[0].Rule, line.By[0].Subject);
        Assert.InRange(Best(why), 0, 15);
        var all = Large.Explain(Study, new Question(QuestionSort.Trace)).Explanation!.Proofs.Length;
        Assert.InRange(Large.Explain(Study, why).Explanation!.Proofs.Length, 1, all - 1);
    }

    [Fact]
    public void A_pack_twice_as_large_proves_no_more_rules()
    {
        var twice = CompiledPack.Load(LargePack.Files(1000)).Pack!;
        var question = new Question(QuestionSort.Trace);
        Assert.Equal(
            Large.Explain(Study, question).Explanation!.Proofs.Length, twice.Explain(Study, question).Explanation!.Proofs.Length);
    }

    [Fact]
    public void A_search_keeps_to_its_budget()
    {
        var answer = Large.Explain(Study, new Question(QuestionSort.WhatIf)).Explanation!;
        Assert.NotEmpty(answer.WhatIf);
        Assert.All(answer.WhatIf, w => Assert.InRange(w.Search.Tried, 1, 4_000));
    }

    private static double Best(Question question)
    {
        var best = double.MaxValue;
        for (var i = 0; i < 15; i++)
        {
            var start = Stopwatch.GetTimestamp();
            Assert.NotNull(Large.Explain(Study, question).Explanation);
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }
        return best;
    }
}
