using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Text;
using FindingRules.Packs;
using FindingRules.Testing;
using FindingRules.Tests.ShippedPack;
using Xunit;

namespace FindingRules.Tests.Speed;

/// <summary>What a reading allocates, counted: no clock, so that it fails wherever it grows.</summary>
public sealed class ReadingWorkTests
{
    private static readonly SourceText _sent =
        new("study.json", Repository.ReadText("tests", "FindingRules.Benchmarks", "Http", "study.json"));

    /// <summary>All that is worked out beside what the reading says is little, and all that it says is said once.</summary>
    [Fact]
    public void A_reading_of_the_shipped_pack_allocates_at_most_100_kilobytes() =>
        Assert.InRange(Allocated(Shipped.Compiled.Network, Read(_sent, Shipped.Pack)), 1, 100 * 1024);

    [Fact]
    public void A_study_is_read_into_at_most_80_kilobytes()
    {
        var sent = SourceText.FromUtf8("study.json", _sent.Utf8);
        Assert.InRange(Allocated(() => Read(sent, Shipped.Pack)), 1, 80 * 1024);
    }

    [Fact]
    public void Rules_about_structures_that_are_not_in_the_study_make_a_reading_no_larger()
    {
        // The study looks at the first four kinds; the others are more of the same.
        var (few, many) = (OfLarge(500), OfLarge(2_000));
        Assert.InRange(many, 1, few + (few / 20));
    }

    private static long OfLarge(int rules)
    {
        var pack = CompiledPack.Load(LargePack.Files(rules)).Pack!;
        return Allocated(pack.Network, Read(new SourceText("study.json", LargePack.Study), pack.Pack));
    }

    private static Study Read(SourceText sent, Pack pack) => StudyReader.Read(sent, pack, LoadLimits.Default, new MessageBag())!;

    private static long Allocated(RuleNetwork network, Study study) => Allocated(() => Evaluator.Evaluate(network, study));

    private static long Allocated(Action act)
    {
        for (var i = 0; i < 3; i++) act();
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 10; i++) act();
        return (GC.GetAllocatedBytesForCurrentThread() - before) / 10;
    }
}
