using System.Globalization;
using FindingRules.Model.Readings;
using Xunit;

namespace FindingRules.Tests.ShippedPack;

/// <summary>Probabilities that the pack states, against post-test values computed from the published figures.</summary>
public sealed class ProbabilityTests
{
    // Davis et al. 2015: sensitivity .72, specificity .92.
    [Theory]
    [InlineData("10 %", "0.5000", "0.0327")]
    [InlineData("30 %", "0.7941", "0.1154")]
    [InlineData("50 %", "0.9000", "0.2333")]
    [InlineData("70 %", "0.9545", "0.4153")]
    public void F_FB_01_Foreign_body(string before, string positive, string negative)
    {
        Assert.Equal(positive, After("wound-site", $$""" "pre-test-body": "{{before}}", "echogenic-body": "present" """));
        Assert.Equal(negative, After("wound-site", $$""" "pre-test-body": "{{before}}", "echogenic-body": "absent" """));
    }

    // Liu et al. 2020: .87 and .88.
    [Theory]
    [InlineData("10 %", "0.4462", "0.0161")]
    [InlineData("30 %", "0.7565", "0.0595")]
    [InlineData("50 %", "0.8788", "0.1287")]
    [InlineData("70 %", "0.9442", "0.2563")]
    public void F_ACC_03_Full_thickness_tear(string before, string positive, string negative)
    {
        Assert.Equal(positive, After("supraspinatus", $$"""{{Shipped.Through}}, "pre-test-tear": "{{before}}" """));
        Assert.Equal(negative, After("supraspinatus", $$""" "fluid": "none", "pre-test-tear": "{{before}}" """));
    }

    // Bignotti et al. 2015: .91 and .854; Xu et al. 2015 print a likelihood ratio of 2.77 (73.5 % from 50 %).
    [Fact]
    public void F_MOR_01_and_02_Two_analyses_of_one_finding_are_both_stated_by_name()
    {
        var reading = Shipped.Read(
            "third-web-space", """ "web-mass": "present", "plantar-shift": "present", "clip-recorded": "present", "pre-test-neuroma": "50 %" """);

        Assert.Equal(["0.7347", "0.8617"], reading.Probabilities.Select(FourPlaces).Order(StringComparer.Ordinal));
        Assert.Contains(reading.Probabilities, p => p.Text.Contains("Bignotti", StringComparison.Ordinal));
        Assert.Contains(reading.Probabilities, p => p.Text.Contains("Xu", StringComparison.Ordinal));
    }

    // Tai et al. 2012: .873 and .833 for 9 mm2 or more.
    [Theory]
    [InlineData("10 %", "0.3674", "0.0167")]
    [InlineData("30 %", "0.6914", "0.0613")]
    [InlineData("50 %", "0.8394", "0.1323")]
    [InlineData("70 %", "0.9242", "0.2624")]
    public void F_CTS_01_Carpal_tunnel(string before, string positive, string negative)
    {
        Assert.Equal(positive, After("median-nerve", $$""" "csa-inlet": "9.0 mm2", "pre-test-syndrome": "{{before}}" """));
        Assert.Equal(negative, After("median-nerve", $$""" "csa-inlet": "8.9 mm2", "pre-test-syndrome": "{{before}}" """));
    }

    // Chang et al. 2018: .85 and .91.
    [Theory]
    [InlineData("10 %", "0.5120", "0.0180")]
    [InlineData("30 %", "0.8019", "0.0660")]
    [InlineData("50 %", "0.9043", "0.1415")]
    [InlineData("70 %", "0.9566", "0.2778")]
    public void F_CUB_01_Ulnar_nerve(string before, string positive, string negative)
    {
        Assert.Equal(positive, After("ulnar-nerve", $$""" "csa-elbow": "10.1 mm2", "pre-test-neuropathy": "{{before}}" """));
        Assert.Equal(negative, After("ulnar-nerve", $$""" "csa-elbow": "10.0 mm2", "pre-test-neuropathy": "{{before}}" """));
    }

    // J Clin Med 2021;10:4092: .813 and .956 for more than 7 mm.
    [Theory]
    [InlineData("10 %", "0.6725", "0.0213")]
    [InlineData("30 %", "0.8879", "0.0773")]
    [InlineData("50 %", "0.9487", "0.1636")]
    [InlineData("70 %", "0.9773", "0.3134")]
    public void F_TEN_06_Patellar_tendon(string before, string positive, string negative)
    {
        Assert.Equal(positive, After("patellar-tendon", $$""" "proximal-thickness": "7.1 mm", "pre-test-tendinopathy": "{{before}}" """));
        Assert.Equal(negative, After("patellar-tendon", $$""" "proximal-thickness": "7.0 mm", "pre-test-tendinopathy": "{{before}}" """));
    }

    // Roy et al. 2015, Liu et al. 2020: published figures disagree, so none is used unless a probability was sent.
    [Fact]
    public void F_ACC_09_No_probability_without_one_before() =>
        Assert.Empty(Shipped.Read("supraspinatus", Shipped.Through).Probabilities);

    private static string After(string structure, string findings) =>
        FourPlaces(Assert.Single(Shipped.Read(structure, findings).Probabilities));

    /// <summary>The exact fraction, rounded here only.</summary>
    private static string FourPlaces(ProbabilityNote note)
    {
        var parts = note.AfterExact.Split('/');
        var value = decimal.Parse(parts[0], CultureInfo.InvariantCulture) / (parts.Length > 1 ? decimal.Parse(parts[1], CultureInfo.InvariantCulture) : 1);
        return Math.Round(value, 4, MidpointRounding.AwayFromZero).ToString("0.0000", CultureInfo.InvariantCulture);
    }
}
