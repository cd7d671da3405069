using System.Diagnostics;
using FindingRules.Model.Messages;
using FindingRules.Testing.Broken;
using Xunit;

namespace FindingRules.Tests.Broken;

/// <summary>A pack that is wrong is told so, at a place in its files, in good time, and never by an exception.</summary>
public sealed class BrokenPackTests
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(10);

    public static TheoryData<string> Damages => [.. BrokenPacks.ByDamage.Keys];

    [Fact]
    public void There_are_packs_enough() => Assert.InRange(BrokenPacks.All.Count(), 200, int.MaxValue);

    [Theory]
    [MemberData(nameof(Damages))]
    public void A_broken_pack_is_told_what_is_wrong_and_where(string damage) =>
        Failures.None(BrokenPacks.ByDamage[damage]().Select(pack => Failures.Of(pack.Name, () => Check(pack))));

    private static string? Check(BrokenPack broken)
    {
        var watch = Stopwatch.StartNew();
        var load = CompiledPack.Load(broken.Files);
        if (watch.Elapsed > Longest) return $"took {watch.Elapsed}";
        if (load.Pack is not null) return "was taken for whole";
        return load.Messages.Any(m => m.Severity == Severity.Error)
            ? load.Messages.Select(Failures.Misplaced).FirstOrDefault(m => m is not null)
            : "was refused without an error";
    }
}
