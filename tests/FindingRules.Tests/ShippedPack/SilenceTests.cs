using Xunit;

namespace FindingRules.Tests.ShippedPack;

/// <summary>What is undecided or doubtful must reach the text that is pasted.</summary>
public sealed class SilenceTests
{
    [Fact]
    public void A_tear_measured_and_not_described_is_undecided_and_not_nothing()
    {
        var reading = Shipped.Read("supraspinatus", """ "tear-length": "55 mm", "retraction": "at-glenoid" """);
        Assert.Empty(reading.Suggestions);
        Assert.StartsWith("Undecided: what was found settles nothing yet. Needed: ", reading.ImpressionText, StringComparison.Ordinal);
        Assert.DoesNotContain("No rule of this pack applies", reading.ImpressionText, StringComparison.Ordinal);
    }

    [Fact]
    public void Findings_of_a_structure_sent_as_not_assessable_are_used_and_said()
    {
        var reading = Shipped.ReadStudy($$"""
            { "study": "T-1", "subjects": [
              { "structure": "supraspinatus", "side": "right", "notAssessable": true, "findings": { {{Shipped.Through}} } } ] }
            """);
        Assert.Contains("not assessable and with findings", Assert.Single(reading.Notes), StringComparison.Ordinal);
        Assert.Contains(reading.Notes[0], reading.ImpressionText, StringComparison.Ordinal);
    }
}
