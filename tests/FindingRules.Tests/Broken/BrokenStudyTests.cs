using System.Diagnostics;
using FindingRules.Model.Messages;
using FindingRules.Model.Text;
using FindingRules.Testing;
using FindingRules.Testing.Broken;
using Xunit;

namespace FindingRules.Tests.Broken;

/// <summary>A study that is wrong gives no reading, and its sender is told what is wrong and where.</summary>
public sealed class BrokenStudyTests
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(30);
    private static readonly CompiledPack Pack = ExamplePack.Plain.Compile();

    public static TheoryData<string> Damages => [.. BrokenStudies.ByDamage.Keys];

    [Fact]
    public void There_are_studies_enough() => Assert.InRange(BrokenStudies.All.Count(), 200, int.MaxValue);

    [Fact]
    public void The_study_that_is_spoilt_is_whole()
    {
        var read = Pack.Read(new SourceText("study.json", BrokenStudy.Whole));
        Assert.DoesNotContain(read.Messages, m => m.Severity == Severity.Error);
        Assert.NotNull(read.Reading);
    }

    [Theory]
    [MemberData(nameof(Damages))]
    public void A_broken_study_gives_no_reading_and_says_where(string damage) =>
        Failures.None(BrokenStudies.ByDamage[damage]().Select(study => Failures.Of(study.Name, () => Check(study))));

    private static string? Check(BrokenStudy broken)
    {
        var watch = Stopwatch.StartNew();
        var read = Pack.Read(new SourceText("study.json", broken.Text));
        if (watch.Elapsed > Longest) return $"took {watch.Elapsed}";
        if (read.Reading is not null) return "gave a reading";
        return read.Messages.Any(m => m.Severity == Severity.Error)
            ? read.Messages.Select(Failures.Misplaced).FirstOrDefault(m => m is not null)
            : "was refused without an error";
    }
}
