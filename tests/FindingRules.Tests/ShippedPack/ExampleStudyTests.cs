using FindingRules.Model.Readings;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.ShippedPack;

/// <summary>The example studies that lie beside the pack.</summary>
public sealed class ExampleStudyTests
{
    public static TheoryData<string> Studies() =>
        [.. Repository.Files(Shipped.Folder + "/studies", "*.json").Select(Path.GetFileName).OfType<string>()];

    [Theory]
    [MemberData(nameof(Studies))]
    public void Every_example_can_be_read(string file)
    {
        var reading = Of(file);

        Assert.Contains("DEMONSTRATION", reading.ImpressionText, StringComparison.Ordinal);
        Assert.EndsWith("Local protocols and licensed practice decide.", reading.ImpressionText.TrimEnd(), StringComparison.Ordinal);
    }

    [Fact]
    public void There_is_an_example_for_each_question() => Assert.True(Studies().Count >= 6);

    [Fact]
    public void A_normal_shoulder_gets_one_calm_line_and_nothing_else()
    {
        var reading = Of("shoulder-normal.json");

        Assert.NotNull(reading.Calm);
        Assert.Equal(2, reading.ImpressionText.TrimEnd().Split('\n').Length);
        Assert.Empty(reading.Suggestions);
        Assert.Empty(reading.NextSteps);
        Assert.Empty(reading.Cautions);
        Assert.Empty(reading.AskNext);
        Assert.Empty(reading.Borderline);
    }

    [Fact]
    public void The_first_example_says_what_the_design_says_of_it()
    {
        var reading = Of("shoulder.json");

        Assert.Equal("full-thickness", reading.ValueOf("tear-depth"));
        Assert.Contains("14 mm", reading.TextOf("tear-depth"), StringComparison.Ordinal);
        Assert.Equal("medium", reading.ValueOf("tear-size"));
        Assert.True(reading.Offers("evaluate right subscapularis"));
        Assert.True(reading.Warns("position-overestimates"));
        Assert.Contains(reading.NotAssessed, n => n.Subject == "right subscapularis");
        Assert.Contains(reading.AskNext, a => a.Finding == "retraction");
        Assert.True(reading.Offers("evaluate right supraspinatus-muscle"));
    }

    [Fact]
    public void A_nearly_empty_study_is_not_called_normal()
    {
        var reading = Of("shoulder-nearly-empty.json");

        Assert.Null(reading.Calm);
        Assert.NotEmpty(reading.NotAssessed);
        Assert.Empty(reading.Suggestions);
    }

    private static Reading Of(string file) => Shipped.ReadStudy(Repository.ReadText(Shipped.Folder, "studies", file));
}
