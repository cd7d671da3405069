using CsCheck;
using FindingRules.Benchmarks.Deciding;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Studies;
using FindingRules.Testing.Generators;
using FindingRules.Workload;
using Xunit;

namespace FindingRules.Tests.Speed;

/// <summary>What a decision does and allocates, counted: no clock, so that it fails wherever it grows.</summary>
public sealed class DecisionWorkTests
{
    private static readonly StudyFacts _facts = new FactsDrawing(seed: 2).Make(1)[0];

    [Theory]
    [InlineData(500)]
    [InlineData(5_000)]
    public void A_decision_allocates_nothing_after_warm_up(int rules)
    {
        var pack = new WorkloadPack(new RuleDrawing(seed: 1).Make(rules));
        var network = NetworkCompiler.Compile(pack.Pack);
        var study = pack.StudyOf(_facts);
        Decide(network, study);
        Assert.Equal(0, Allocated(() => Decide(network, study)));
    }

    [Fact]
    public void Nor_does_one_with_lesions_topics_counts_other_sides_and_an_earlier_study()
    {
        var source = new PCG(1, 7);
        for (var i = 0; i < 150; i++)
        {
            var sample = Sample.Any.Generate(source, null, out var _);
            var network = NetworkCompiler.Compile(sample.Pack);
            Decide(network, sample.Study);
            var allocated = Allocated(() => Decide(network, sample.Study));
            Assert.True(allocated == 0, $"{allocated} bytes\n{sample}");
        }
    }

    [Fact]
    public void Rules_about_structures_that_are_not_in_the_study_make_no_work()
    {
        var drawn = new RuleDrawing(seed: 1).Make(50_000);
        // One rule in a hundred speaks of the study's structures: 500 of 50,000.
        var spread = drawn.Select((r, i) => i < 500 ? r : r with { Structure = WorkloadSize.Structures + (i % 400) });
        var (few, many) = (Work([.. drawn.Take(500)]), Work([.. spread]));
        Assert.True(few.Planes > 0);
        Assert.Equal((few.Planes, few.Candidates, few.Nodes), (many.Planes, many.Candidates, many.Nodes));
    }

    [Fact]
    public void Rules_of_own_findings_are_decided_without_looking_at_one()
    {
        var work = Work(new RuleDrawing(seed: 1).Make(500));
        Assert.Equal((0, 0), (work.Nodes, work.Candidates));
    }

    [Fact]
    public void Planes_grow_by_the_block_and_not_by_the_rule()
    {
        var (few, many) = (Work(new RuleDrawing(seed: 1).Make(500)), Work(new RuleDrawing(seed: 1).Make(50_000)));
        // 42 and 4,167 rules to a structure: one block and seventeen.
        Assert.InRange(many.Planes, few.Planes, 17 * few.Planes);
    }

    private static WorkCount Work(System.Collections.Immutable.ImmutableArray<RuleSketch> rules)
    {
        var pack = new WorkloadPack(rules, absentStructures: 400);
        var examination = new Examination(NetworkCompiler.Compile(pack.Pack));
        Evaluator.Settle(examination, pack.StudyOf(_facts));
        return examination.Work;
    }

    private static void Decide(RuleNetwork network, Study study)
    {
        var examination = network.Examinations.Take();
        Evaluator.Settle(examination, study);
        network.Examinations.Return(examination);
    }

    private static long Allocated(Action act)
    {
        act();
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 10; i++) act();
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }
}
