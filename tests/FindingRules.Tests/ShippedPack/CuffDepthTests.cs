using Xunit;

namespace FindingRules.Tests.ShippedPack;

/// <summary>Depth of a cuff tear against published definitions; each test is named after its fact.</summary>
public sealed class CuffDepthTests
{
    // Calgary Guide teaching page: full-thickness runs from the articular to the bursal side; width does not enter.
    [Theory]
    [InlineData("""{ "from": "bursal", "to": "articular" }""", "full-thickness")]
    [InlineData("\"bursal\"", "bursal-sided")]
    [InlineData("\"articular\"", "articular-sided")]
    [InlineData("\"intrasubstance\"", "intrasubstance")]
    [InlineData("""["bursal", "articular"]""", "both-surfaces")]
    public void F_RCT_01_Depth_is_named_by_the_surfaces_reached(string fluid, string depth)
    {
        foreach (var width in new[] { "4 mm", "40 mm" })
        {
            var reading = Shipped.Read("supraspinatus", $$""" "fluid": {{fluid}}, "reangled": "persists", "planes": "two", "tear-width": "{{width}}" """);

            Assert.Equal(depth, reading.ValueOf("tear-depth"));
        }
    }

    // Ellman 1990, by way of a textbook extract: below 3 mm, 3 to 6 mm, above 6 mm; closed at 3 and 6.
    [Theory]
    [InlineData("2.9 mm", "grade-1")]
    [InlineData("3.0 mm", "grade-2")]
    [InlineData("6.0 mm", "grade-2")]
    [InlineData("6.1 mm", "grade-3")]
    [InlineData("0.6 cm", "grade-2")]
    public void F_RCT_02_Ellman_depth_grades(string depth, string grade)
    {
        var reading = Shipped.Read("supraspinatus", $$"""{{Shipped.Bursal}}, "defect-depth": "{{depth}}" """);

        Assert.Equal(grade, reading.ValueOf("ellman-depth"));
        Assert.Contains("Ellman", reading.TextOf("ellman-depth"), StringComparison.Ordinal);
    }

    // The same extract: 5.5 mm is grade 2 by depth, 55 % of 10 mm is more than half (grade 3).
    [Theory]
    [InlineData("5.5 mm", "10 mm", "discordant")]
    [InlineData("6.5 mm", "14 mm", "discordant")]
    [InlineData("5.0 mm", "10 mm", null)]
    [InlineData("7.0 mm", "12 mm", null)]
    public void F_RCT_02_Millimetres_and_share_may_disagree(string depth, string thickness, string? agreement)
    {
        var reading = Shipped.Read(
            "supraspinatus", $$"""{{Shipped.Bursal}}, "defect-depth": "{{depth}}", "thickness": "{{thickness}}" """);

        Assert.Equal(agreement, reading.ValueOf("depth-agreement"));
    }

    // Plancher et al. 2021: agreement between readers is fair only.
    [Fact]
    public void F_RCT_03_A_depth_grade_is_suggested_and_not_stated()
    {
        var reading = Shipped.Read("supraspinatus", $$"""{{Shipped.Bursal}}, "defect-depth": "4 mm" """);

        Assert.Contains("suggests", reading.TextOf("ellman-depth"), StringComparison.Ordinal);
    }

    // Snyder, by way of a reference page: extent below 1, below 2, below 3 cm; nothing printed beyond without a flap.
    [Theory]
    [InlineData("0.9 cm", "class-1")]
    [InlineData("1.0 cm", "class-2")]
    [InlineData("2.0 cm", "class-3")]
    [InlineData("3.0 cm", "unclassifiable")]
    public void F_RCT_05_Snyder_partial_classes(string extent, string grade)
    {
        var reading = Shipped.Read(
            "supraspinatus", $$"""{{Shipped.Bursal}}, "flap": "absent", "partial-extent": "{{extent}}" """, """ "also-grade": "snyder" """);

        Assert.Equal(grade, reading.ValueOf("snyder-partial"));
    }

    // Radiology 1995;197:443-446: a partial tear is one seen in two planes at right angles.
    [Theory]
    [InlineData(""", "planes": "two" """, false)]
    [InlineData(""", "planes": "one" """, true)]
    [InlineData("", true)]
    public void F_RCT_12_A_partial_tear_waits_for_a_second_plane(string planes, bool isHeld)
    {
        var reading = Shipped.Read("supraspinatus", $$""" "fluid": "articular", "reangled": "persists" {{planes}} """);

        Assert.Equal(isHeld, reading.Holds("tear-depth"));
        Assert.Equal(isHeld, reading.Offers("second-plane"));
    }

    // Ruotolo et al.: more than 7 mm of bare bone went with about half the thickness.
    [Theory]
    [InlineData("7.0 mm", null)]
    [InlineData("7.1 mm", "about-half")]
    public void F_RCT_14_Exposed_footprint(string exposed, string? value)
    {
        var reading = Shipped.Read("supraspinatus", $$"""{{Shipped.Bursal}}, "footprint-exposed": "{{exposed}}" """);

        Assert.Equal(value, reading.ValueOf("footprint-state"));
    }

    // Gupta et al. 2025: a share must carry its denominator.
    [Fact]
    public void F_RCT_16_A_share_of_thickness_names_the_thickness()
    {
        var reading = Shipped.Read("supraspinatus", $$"""{{Shipped.Bursal}}, "defect-depth": "5.5 mm", "thickness": "9.9 mm" """);

        Assert.Contains("9.9 mm", reading.TextOf("depth-agreement"), StringComparison.Ordinal);
    }

    // Crass, van de Vegte, Harkavy 1988: a tendon turns dark a few degrees off the perpendicular.
    [Theory]
    [InlineData("hypoechoic")]
    [InlineData("anechoic")]
    public void F_TEC_01_A_dark_area_waits_for_re_angling(string echo)
    {
        var reading = Shipped.Read("supraspinatus", $$""" "echo": "{{echo}}", "fluid": { "from": "bursal", "to": "articular" } """);

        Assert.True(reading.Holds("tear-depth"));
        Assert.True(reading.Offers("re-angle"));
        Assert.Empty(reading.Suggestions);
    }

    // Artefact appendix of a textbook: the angle mimics a tear and is undone by a perpendicular beam.
    [Fact]
    public void F_TEC_02_A_dark_area_that_resolves_is_no_tear()
    {
        var reading = Shipped.Read("supraspinatus", """ "echo": "hypoechoic", "fluid": "articular", "planes": "two", "reangled": "resolves" """);

        Assert.Empty(reading.Suggestions);
        Assert.True(reading.Warns("anisotropy-explains"));
    }
}
