using FindingRules.Model.Readings;
using Xunit;

namespace FindingRules.Tests.ShippedPack;

/// <summary>Nerves, first compartment, pulleys, hip and popliteal fossa; each test is named after its fact.</summary>
public sealed class HandAndHipTests
{
    // Tai et al. 2012 (9 mm2 or more), Olde Dubbelink et al. 2020 (a fixed 11 mm2).
    [Theory]
    [InlineData("8.9 mm2", null)]
    [InlineData("9.0 mm2", "from-9")]
    [InlineData("10.9 mm2", "from-9")]
    [InlineData("11.0 mm2", "from-11")]
    public void F_CTS_01_Median_nerve_at_the_inlet(string area, string? value) =>
        Assert.Equal(value, Shipped.Read("median-nerve", $$""" "csa-inlet": "{{area}}" """).ValueOf("median-size"));

    // Klauser et al. 2009: 2 mm2, printed without a sign.
    [Theory]
    [InlineData("8.9 mm2", null)]
    [InlineData("9.0 mm2", "from-2")]
    public void F_CTS_02_Difference_to_the_forearm(string area, string? value) =>
        Assert.Equal(value, Shipped.Read("median-nerve", $$""" "csa-inlet": "{{area}}", "csa-forearm": "7 mm2" """).ValueOf("median-difference"));

    // Olde Dubbelink et al. 2020: 0.88 x circumference in cm - 4.0; limits computed from that.
    [Theory]
    [InlineData("14 cm", "8.32", "8.33")]
    [InlineData("15 cm", "9.20", "9.21")]
    [InlineData("16 cm", "10.08", "10.09")]
    [InlineData("17 cm", "10.96", "10.97")]
    [InlineData("180 mm", "11.84", "11.85")]
    public void F_CTS_03_Limit_by_wrist_circumference(string wrist, string at, string above)
    {
        // Below 9 mm2 no limit in print is met, so none by the wrist is spoken of.
        Assert.Equal(wrist == "14 cm" ? null : "within-limit", ByWrist(at, wrist));
        Assert.Equal("above-limit", ByWrist(above, wrist));
    }

    // Korean J Pain 2020: at the hook of hamate the nerve is smaller in patients.
    [Fact]
    public void F_CTS_05_The_hook_of_hamate_is_another_level()
    {
        var reading = Shipped.Read("median-nerve", """ "csa-hook": "14 mm2" """);

        Assert.Empty(reading.Suggestions);
        Assert.True(reading.Warns("hook-level"));
    }

    // Chang et al. 2018 (10 mm2), a paper of 2021 (more than 10): the pack takes more than 10.
    [Theory]
    [InlineData("10.0 mm2", null)]
    [InlineData("10.1 mm2", "above-10")]
    public void F_CUB_01_Ulnar_nerve_at_the_elbow(string area, string? value) =>
        Assert.Equal(value, Shipped.Read("ulnar-nerve", $$""" "csa-elbow": "{{area}}" """).ValueOf("ulnar-size"));

    // PMID 28151762: instability is common in health. Reference page: firm pressure prevents it.
    [Fact]
    public void F_CUB_02_and_F_TEC_10_Instability_is_common_and_pressure_hides_it()
    {
        Assert.True(Shipped.Read("ulnar-nerve", """ "nerve-stability": "dislocates" """).Warns("instability-common"));
        Assert.True(Shipped.Read("ulnar-nerve", """ "nerve-stability": "stable", "probe-pressure": "firm" """).Warns("pressure-prevents"));
    }

    // Series of 60 and 60 wrists: 0.45 mm of retinaculum, printed without a sign; sheath 0.95 mm without complaint.
    [Theory]
    [InlineData("retinaculum-thickness", "0.45 mm", null)]
    [InlineData("retinaculum-thickness", "0.46 mm", "thick-retinaculum")]
    [InlineData("sheath-thickness", "0.95 mm", null)]
    public void F_DQ_01_Retinaculum_and_sheath_are_two_measurements(string measure, string thickness, string? value)
    {
        var reading = Shipped.Read(
            "first-extensor-compartment", $$""" "{{measure}}": "{{thickness}}", "compartment-symptomatic": "absent" """);

        Assert.Equal(value, reading.ValueOf("compartment-state"));
        Assert.Equal(
            value is null ? null : "suggests-disease",
            Shipped.Read("first-extensor-compartment", $$""" "{{measure}}": "{{thickness}}", "compartment-symptomatic": "present" """).ValueOf("compartment-state"));
    }

    // Spirig (0.62 mm), broken by a series whose patients average 0.49 mm.
    [Theory]
    [InlineData("0.62 mm", null, true)]
    [InlineData("0.63 mm", "thickened", false)]
    public void F_TF_02_and_03_A_thin_pulley_excludes_nothing(string thickness, string? value, bool warns)
    {
        var reading = Shipped.Read("ring-pulley", $$""" "triggering": "present", "pulley-thickness": "{{thickness}}" """);

        Assert.Equal(value, reading.ValueOf("pulley-state"));
        Assert.Equal(warns, reading.Warns("thin-pulley-trigger"));
    }

    // Teaching pages: more than 5 mm, or more than 2 mm of side difference.
    [Theory]
    [InlineData("5.0 mm", "3.0 mm", null, null)]
    [InlineData("5.0 mm", "2.9 mm", "child-difference", null)]
    [InlineData("5.1 mm", "5.0 mm", null, "above-flat-limit")]
    public void F_HIP_01_Hip_of_a_child(string here, string there, string? side, string? depth)
    {
        var reading = Hip(here, there, """ "age": "4 years", "height": "100 cm" """);

        Assert.Equal(side, reading.ValueOf("hip-side"));
        Assert.Equal(depth, reading.ValueOf("hip-depth"));
    }

    // Rohrschneider et al. 1996: limits run to 7.5 mm; larger healthy children average 5.5 mm.
    [Theory]
    [InlineData("5.4 mm", null, true)]
    [InlineData("7.5 mm", null, true)]
    [InlineData("7.6 mm", "above-all-limits", false)]
    public void F_HIP_02_The_flat_limit_is_not_used_in_larger_children(string here, string? depth, bool warns)
    {
        const string Facts = """ "age": "9 years", "height": "135 cm", "fever": "absent" """;
        var alone = Shipped.Read("hip", $$""" "anterior-recess": "{{here}}" """, Facts);

        Assert.Equal(depth, alone.ValueOf("hip-depth"));
        Assert.Equal(warns, alone.Warns("larger-child"));
        Assert.Equal(depth, Hip(here, "5.0 mm", Facts).ValueOf("hip-depth"));
        Assert.False(Hip(here, "5.3 mm", Facts).Warns("larger-child"));
    }

    // Rohrschneider et al. 1996: limits from 3.5 mm, means of 2.5 mm at 65 cm and 5 mm at 100 cm, a straight line between.
    [Theory]
    [InlineData("65 cm", "3.5 mm", false)]
    [InlineData("65 cm", "3.6 mm", true)]
    [InlineData("93 cm", "4.5 mm", false)]
    [InlineData("93 cm", "4.6 mm", true)]
    [InlineData("100 cm", "5.0 mm", false)]
    [InlineData("101 cm", "5.0 mm", false)]
    public void F_HIP_02_A_small_child_is_not_called_normal_by_the_flat_limit(string height, string depth, bool isHeld)
    {
        var reading = Hip(depth, depth, $$""" "age": "2 years", "height": "{{height}}" """);

        Assert.Equal(isHeld, reading.Holds("hip-depth"));
        Assert.Null(reading.ValueOf("hip-depth"));
    }

    // Pediatr Rheumatol 2017: a median of 6.7 mm at 16 years; beside 7.5 mm it is said whether the other side is much the same.
    [Theory]
    [InlineData("8.0 mm", "5.9 mm", "above-all-limits", "child-difference")]
    [InlineData("8.0 mm", "6.0 mm", "above-all-limits", "child-alike")]
    [InlineData("7.5 mm", "7.5 mm", null, null)]
    public void F_HIP_03_A_tall_child_with_equal_sides(string here, string there, string? depth, string? side)
    {
        var reading = Hip(here, there, """ "age": "15 years", "height": "175 cm", "fever": "absent" """);

        Assert.Equal((depth, side), (reading.ValueOf("hip-depth"), reading.ValueOf("hip-side")));
    }

    // Page quoting the literature: 7 mm or more and 1 mm or more than the other side.
    [Theory]
    [InlineData("6.9 mm", "5.0 mm", null)]
    [InlineData("7.0 mm", "6.1 mm", null)]
    [InlineData("7.0 mm", "6.0 mm", "adult-distension")]
    [InlineData("9.0 mm", "8.0 mm", "adult-distension")]
    [InlineData("9.0 mm", "8.1 mm", null)]
    [InlineData("9.1 mm", "9.0 mm", "adult-above-9")]
    public void F_HIP_04_and_06_Hip_of_an_adult(string here, string there, string? value) =>
        Assert.Equal(value, Hip(here, there, """ "age": "50 years" """).ValueOf("hip-depth"));

    // Ward et al. 2001: no neck, no popliteal cyst; a myxoid liposarcoma was once called one.
    [Theory]
    [InlineData("seen", "absent", "popliteal-cyst", false)]
    [InlineData("seen", "present", "mass-pathway", true)]
    [InlineData("not-seen", "absent", "mass-pathway", true)]
    [InlineData("not-assessable", "absent", "mass-pathway", true)]
    [InlineData("not-assessable", "not-assessable", "mass-pathway", true)]
    public void F_BAK_01_A_neck_makes_a_popliteal_cyst(string neck, string solid, string value, bool isFollowed)
    {
        var reading = Shipped.Read("popliteal-fossa", $$""" "posterior-cyst": "present", "cyst-neck": "{{neck}}", "solid-parts": "{{solid}}" """);

        Assert.Equal(value, reading.ValueOf("popliteal-lesion"));
        Assert.Equal(isFollowed, reading.Offers("mass-mri"));
    }

    private static string? ByWrist(string area, string wrist) => Shipped
        .Read("median-nerve", $$""" "csa-inlet": "{{area}} mm2", "wrist-circumference": "{{wrist}}" """)
        .ValueOf("median-by-wrist");

    private static Reading Hip(string here, string there, string facts) => Shipped.ReadSubjects(
        facts,
        Shipped.Subject("hip", "right", $$""" "anterior-recess": "{{here}}", "prosthesis": "absent" """),
        Shipped.Subject("hip", "left", $$""" "anterior-recess": "{{there}}", "prosthesis": "absent" """));
}
