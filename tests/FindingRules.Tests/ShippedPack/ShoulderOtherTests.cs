using Xunit;

namespace FindingRules.Tests.ShippedPack;

/// <summary>Follow-up, signs, bursa, biceps, deposits and muscle of the shoulder; each test is named after its fact.</summary>
public sealed class ShoulderOtherTests
{
    // Jacobson et al. 2004: irregular cortex with joint fluid was the best pair of signs.
    [Fact]
    public void F_RCT_11_Cortical_irregularity_with_joint_fluid()
    {
        var reading = Shipped.ReadSubjects(
            "",
            Shipped.Subject("supraspinatus", "right", """ "fluid": "none", "cortical-irregularity": "present" """),
            Shipped.Subject("glenohumeral-joint", "right", """ "recess-distended": "present" """));

        Assert.Equal("present", reading.ValueOf("indirect-full"));
        Assert.Null(reading.ValueOf("tear-depth"));
    }

    // Keener et al. 2015: enlargement is a width increase of 5 mm or more.
    [Theory]
    [InlineData("14.9 mm", "not-enlarged")]
    [InlineData("15.0 mm", "enlarged")]
    public void F_RCT_18_Enlargement_of_a_tear(string width, string change)
    {
        var reading = Shipped.ReadStudy($$"""
            { "study": "T-1", "facts": { "arm-position": "crass" },
              "subjects": [{{Shipped.Subject("supraspinatus", "right", $$"""{{Shipped.Through}}, "tear-width": "{{width}}" """)}}],
              "earlier": { "facts": { "arm-position": "crass" },
                "subjects": [{{Shipped.Subject("supraspinatus", "right", $$"""{{Shipped.Through}}, "tear-width": "10 mm" """)}}] } }
            """);

        Assert.Equal(change, reading.ValueOf("tear-change"));
    }

    // Chapter of an online textbook: superficial goes with an intact, deep with an injured subscapularis.
    [Theory]
    [InlineData("medial-superficial", "superficial", "superficial-pattern")]
    [InlineData("medial-deep", "deep", "deep-pattern")]
    public void F_RCT_21_The_layer_of_a_displaced_biceps(string position, string place, string pattern)
    {
        var reading = Shipped.Read("biceps", $$""" "position": "{{position}}" """);

        Assert.Equal(place, reading.ValueOf("biceps-place"));
        Assert.True(reading.Warns(pattern));
    }

    // Two series disagree (predictive value 35 % and 98 %): look again, never "torn".
    [Theory]
    [InlineData("subluxed")]
    [InlineData("medial-deep")]
    public void F_RCT_22_and_23_A_displaced_biceps_asks_for_the_subscapularis(string position)
    {
        var reading = Shipped.Read("biceps", $$""" "position": "{{position}}" """);

        Assert.True(reading.Offers("evaluate right subscapularis"));
        Assert.DoesNotContain(reading.Suggestions, s => s.Subject.Contains("subscapularis", StringComparison.Ordinal));
        Assert.DoesNotContain("torn", reading.ImpressionText, StringComparison.Ordinal);
    }

    // Cholewinski et al. 2008: more than 1.1 mm of thickness, more than 2.1 mm of distance.
    [Theory]
    [InlineData("supraspinatus", "symptomatic", "thickness", "4.0 mm", "5.1 mm", "thickness-difference", false)]
    [InlineData("supraspinatus", "symptomatic", "thickness", "4.0 mm", "5.2 mm", "thickness-difference", true)]
    [InlineData("subacromial-outlet", "space-symptomatic", "tuberosity-distance", "9.0 mm", "11.1 mm", "distance-difference", false)]
    [InlineData("subacromial-outlet", "space-symptomatic", "tuberosity-distance", "9.0 mm", "11.2 mm", "distance-difference", true)]
    public void F_RCT_24_Side_differences(string structure, string sign, string measure, string here, string there, string topic, bool isSaid)
    {
        var reading = Shipped.ReadSubjects(
            "",
            Shipped.Subject(structure, "right", $$""" "{{sign}}": "present", "{{measure}}": "{{here}}" """),
            Shipped.Subject(structure, "left", $$""" "{{sign}}": "absent", "{{measure}}": "{{there}}" """));

        Assert.Equal(isSaid ? "beyond-limit" : null, reading.ValueOf(topic));
    }

    // Tsai et al. 2007 (below 2 mm), PMC3127806 (2 mm or more), White et al. (more than 3 mm on MRI).
    [Theory]
    [InlineData("1.9 mm", null)]
    [InlineData("2.0 mm", "grey-zone")]
    [InlineData("2.1 mm", "grey-zone")]
    [InlineData("3.0 mm", "grey-zone")]
    [InlineData("3.1 mm", "thickened")]
    public void F_RCT_27_to_29_Bursal_thickness(string thickness, string? state) =>
        Assert.Equal(state, Shipped.Read("subacromial-bursa", $$""" "bursa-thickness": "{{thickness}}" """).ValueOf("bursa-state"));

    // Scanning protocol of one group: more than 1 mm.
    [Theory]
    [InlineData("1.0 mm", null)]
    [InlineData("1.1 mm", "more-than-usual")]
    public void F_RCT_30_Fluid_in_the_biceps_sheath(string fluid, string? state) =>
        Assert.Equal(state, Shipped.Read("biceps", $$""" "sheath-fluid": "{{fluid}}" """).ValueOf("sheath-state"));

    // Chiou et al.: four types on ultrasound; Doppler graded with the phase defined by pain.
    [Theory]
    [InlineData("arc")]
    [InlineData("fragmented")]
    [InlineData("nodular")]
    [InlineData("cystic")]
    public void F_CAL_01_and_02_Deposits_are_typed_and_Doppler_is_an_association(string type)
    {
        var reading = Shipped.Read("supraspinatus", $$""" "deposit": "{{type}}", "deposit-doppler": "grade-2" """);

        Assert.Equal(type, reading.ValueOf("deposit-class"));
        Assert.True(reading.Warns("doppler-is-association"));
        Assert.DoesNotContain("resorptive", reading.ImpressionText, StringComparison.Ordinal);
    }

    // Gaertner and Heyer: a radiographic scale of poor agreement.
    [Fact]
    public void F_CAL_05_No_radiographic_type_from_ultrasound()
    {
        var reading = Shipped.Read("supraspinatus", """ "deposit": "arc", "radiographic-type": "type-1" """);

        Assert.True(reading.Warns("radiographic-type-unused"));
        Assert.DoesNotContain("type I", reading.ImpressionText, StringComparison.Ordinal);
    }

    // Thomazeau 1996, by way of a reference page; grades of MRI.
    [Theory]
    [InlineData("61 %", "mri", "grade-1")]
    [InlineData("60 %", "mri", "grade-2")]
    [InlineData("40 %", "mri", "grade-2")]
    [InlineData("39 %", "mri", "grade-3")]
    [InlineData("39 %", "ultrasound", null)]
    public void F_MUS_03_Occupation_ratio(string ratio, string from, string? grade)
    {
        var reading = Shipped.Read("supraspinatus-muscle", $$""" "occupation-ratio": "{{ratio}}", "occupation-from": "{{from}}" """);

        Assert.Equal(grade, reading.ValueOf("occupation-grade"));
    }

    // PMC12145530: acute retraction lowers the filled share of the fossa.
    [Fact]
    public void F_MUS_04_Reduced_bulk_after_an_acute_tear_is_not_called_atrophy()
    {
        var reading = Shipped.ReadSubjects(
            """ "onset": "acute" """,
            Shipped.Subject("supraspinatus", "right", Shipped.Through),
            Shipped.Subject("supraspinatus-muscle", "right", """ "bulk-reduced": "present" """));

        Assert.True(reading.Warns("pseudo-atrophy"));
    }

    // Three numberings in print.
    [Fact]
    public void F_MUS_05_and_06_A_bare_Goutallier_number_is_refused()
    {
        var reading = Shipped.Read("supraspinatus-muscle", """ "goutallier-sent": "bare-number" """);

        Assert.True(reading.Warns("bare-goutallier"));
        Assert.Empty(reading.Suggestions);
    }

    // Park et al. 2020: architecture before echogenicity, none to mild against advanced.
    [Theory]
    [InlineData("lost", "advanced")]
    [InlineData("partly-lost", "not-advanced")]
    public void F_MUS_08_Muscle_by_architecture(string architecture, string state)
    {
        var reading = Shipped.Read("infraspinatus-muscle", $$""" "architecture": "{{architecture}}", "muscle-echo": "markedly-raised" """);

        Assert.Equal(state, reading.ValueOf("muscle-state"));
        Assert.DoesNotContain("Goutallier", reading.ImpressionText, StringComparison.Ordinal);
    }
}
