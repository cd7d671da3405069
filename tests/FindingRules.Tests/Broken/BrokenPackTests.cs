using System.Diagnostics;
using System.Text;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Testing;
using FindingRules.Testing.Broken;
using Xunit;

namespace FindingRules.Tests.Broken;

/// <summary>A pack that is wrong is told so, at a place in its files, in good time, and never by an exception.</summary>
public sealed class BrokenPackTests
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);

    public static TheoryData<string> Damages => [.. BrokenPacks.ByDamage.Keys];

    [Fact]
    public void There_are_packs_enough() => Assert.InRange(BrokenPacks.All.Count(), 200, int.MaxValue);

    [Theory]
    [MemberData(nameof(Damages))]
    public void A_broken_pack_is_told_what_is_wrong_and_where(string damage) =>
        Failures.None(BrokenPacks.ByDamage[damage]().Select(pack => Failures.Of(pack.Name, () => Check(pack))));

    [Theory]
    [InlineData("\uFEFF", "\n")]
    [InlineData("", "\r\n")]
    [InlineData("\uFEFF", "\r\n")]
    public void A_byte_order_mark_and_line_ends_of_another_system_do_no_harm(string start, string lineEnd)
    {
        var files = ExamplePack.Plain.Files.Select(f => f with { Bytes = Encoded(start + Text(f).ReplaceLineEndings(lineEnd)) });
        var load = CompiledPack.Load([.. files]);
        Assert.DoesNotContain(load.Messages, m => m.Severity == Severity.Error);
        Assert.Equal(ExamplePack.Plain.Compile().Pack.MeaningDigest, load.Pack?.Pack.MeaningDigest);
    }

    private static string Text(PackFile file) => Encoding.UTF8.GetString(file.Bytes.Span);

    private static byte[] Encoded(string text) => Encoding.UTF8.GetBytes(text);

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
