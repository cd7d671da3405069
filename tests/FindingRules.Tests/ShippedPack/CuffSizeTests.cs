using FindingRules.Model.Readings;
using Xunit;

namespace FindingRules.Tests.ShippedPack;

/// <summary>Size, retraction and the definitions of massive; each test is named after its fact.</summary>
public sealed class CuffSizeTests
{
    // Ellman 1990, full-thickness: small below 2 cm, large 2 to 4 cm; the line above is lost in the extract.
    [Theory]
    [InlineData("1.9 cm", "small", "medium")]
    [InlineData("2.5 cm", "large", "medium")]
    [InlineData("4.0 cm", "large", "large")]
    [InlineData("4.1 cm", "outside-the-classes", "large")]
    public void F_RCT_04_Ellman_and_Cofield_share_words_and_not_sizes(string length, string ellman, string cofield)
    {
        var reading = Torn(length, facts: """ "also-grade": "ellman" """);

        Assert.Equal(ellman, reading.ValueOf("ellman-size"));
        Assert.Equal(cofield, reading.ValueOf("tear-size"));
        Assert.Contains("Ellman", reading.TextOf("ellman-size"), StringComparison.Ordinal);
        Assert.Contains("Cofield", reading.TextOf("tear-size"), StringComparison.Ordinal);
    }

    // Snyder, by way of a reference page: below 2 cm, 3 to 4 cm; between lies nothing.
    [Theory]
    [InlineData("1.9 cm", "class-2")]
    [InlineData("2.5 cm", "unclassifiable")]
    [InlineData("3.0 cm", "class-3")]
    [InlineData("4.1 cm", "outside-the-classes")]
    public void F_RCT_06_Snyder_complete_leaves_a_gap(string length, string grade)
    {
        var reading = Shipped.ReadSubjects(
            """ "also-grade": "snyder" """,
            Shipped.Subject("supraspinatus", "right", $$"""{{Shipped.Through}}, "puncture": "absent", "tear-length": "{{length}}" """),
            Shipped.Normal("infraspinatus", "right"),
            Shipped.Normal("subscapularis", "right"),
            Shipped.Normal("teres-minor", "right"));

        Assert.Equal(grade, reading.ValueOf("snyder-complete"));
    }

    // Cofield 1982, by way of shoulderdoc.co.uk; 3.0 cm is the pack's choice.
    [Theory]
    [InlineData("0.9 cm", "small")]
    [InlineData("1.0 cm", "medium")]
    [InlineData("2.9 cm", "medium")]
    [InlineData("3.0 cm", "large")]
    [InlineData("30 mm", "large")]
    [InlineData("5.0 cm", "large")]
    [InlineData("5.1 cm", "massive")]
    public void F_RCT_07_Cofield_classes(string length, string grade) => Assert.Equal(grade, Torn(length).ValueOf("tear-size"));

    [Fact]
    public void F_RCT_07_The_choice_at_3_cm_is_shown()
    {
        var size = Torn("3.0 cm").Suggestions.Single(s => s.Topic == "tear-size");

        Assert.Contains(size.Choices, c => c.Contains("3 cm", StringComparison.Ordinal));
        Assert.True(size.IsBorderline);
    }

    // Patte 1990, by way of pacs.de; a stump under the acromion cannot be staged.
    [Theory]
    [InlineData("near-insertion", "stage-1")]
    [InlineData("over-head", "stage-2")]
    [InlineData("at-glenoid", "stage-3")]
    [InlineData("hidden", "cannot-judge")]
    public void F_RCT_08_Patte_stages(string stump, string stage) =>
        Assert.Equal(stage, Torn("2 cm", $$""", "retraction": "{{stump}}" """).ValueOf("retraction-stage"));

    // Schumaier et al. 2020: 67 % of the tuberosity exposed, or retraction to the glenoid rim; MRI and surgery.
    [Theory]
    [InlineData("66 %", "over-head", null)]
    [InlineData("67 %", "over-head", "meets")]
    [InlineData("10 %", "at-glenoid", "meets")]
    public void F_RCT_09_Massive_by_consensus(string exposed, string stump, string? value)
    {
        var reading = Torn("2 cm", $$""", "tuberosity-exposed": "{{exposed}}", "retraction": "{{stump}}" """);

        Assert.Equal(value, reading.ValueOf("massive-by-consensus"));
        Assert.Equal(value is not null, reading.Offers("confirm-massive"));
    }

    // Systematic review 2020, Table II: 5 cm or more; Cofield says more than 5 cm.
    [Theory]
    [InlineData("4.9 cm", null, "large")]
    [InlineData("5.0 cm", "meets", "large")]
    [InlineData("5.1 cm", "meets", "massive")]
    public void F_RCT_10_Massive_by_length_in_reviews(string length, string? review, string cofield)
    {
        var reading = Torn(length);

        Assert.Equal(review, reading.ValueOf("massive-by-length"));
        Assert.Equal(cofield, reading.ValueOf("tear-size"));
    }

    [Fact]
    public void F_RCT_10_Two_torn_tendons_of_one_shoulder_and_not_of_two()
    {
        var here = Shipped.Subject("supraspinatus", "right", Shipped.Through);
        var other = new[] { "infraspinatus", "subscapularis", "teres-minor" };

        var together = Shipped.ReadSubjects("", here, Shipped.Subject("infraspinatus", "right", Shipped.Through));
        var apart = Shipped.ReadSubjects(
            "", [here, .. other.Select(s => Shipped.Normal(s, "right")), Shipped.Subject("supraspinatus", "left", Shipped.Through)]);

        Assert.Equal("meets", together.ValueOf("massive-by-count"));
        Assert.Null(apart.ValueOf("massive-by-count"));
    }

    // AJR 2005: modified Crass overestimates the sagittal size, Crass does not.
    [Theory]
    [InlineData("modified-crass", true)]
    [InlineData("crass", false)]
    public void F_TEC_03_The_position_travels_with_the_length(string position, bool warns)
    {
        var (near, far) = (In("11 mm"), In("14 mm"));

        Assert.Equal(warns, near.Warns("class-near-boundary"));
        Assert.False(near.Warns("position-overestimates"));
        Assert.Equal(warns, far.Warns("position-overestimates"));
        Assert.False(far.Warns("class-near-boundary"));

        Reading In(string length) => Torn(length, facts: $$""" "arm-position": "{{position}}" """);
    }

    // PMID 22837284: partial tears are agreed on poorly in the neutral position.
    [Theory]
    [InlineData("neutral", true)]
    [InlineData("crass", false)]
    public void F_TEC_04_Neutral_position_does_not_exclude_a_partial_tear(string position, bool warns)
    {
        var reading = Shipped.Read("supraspinatus", """ "fluid": "none" """, $$""" "arm-position": "{{position}}" """);

        Assert.Equal(warns, reading.Warns("partial-not-excluded"));
        Assert.Equal(warns, reading.Offers("rescan-position"));
    }

    private static Reading Torn(string length, string more = "", string facts = "") =>
        Shipped.Read("supraspinatus", $$"""{{Shipped.Through}}, "tear-length": "{{length}}" {{more}}""", facts);
}
