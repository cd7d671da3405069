using Xunit;

namespace FindingRules.Tests.ShippedPack;

/// <summary>Plantar fascia, web spaces, foreign bodies and masses; each test is named after its fact.</summary>
public sealed class FootAndWoundTests
{
    // Cardinal et al. 1996: painful heels from 3.2 mm, healthy ones to 4.0 mm.
    [Theory]
    [InlineData("3.1 mm", null, false)]
    [InlineData("3.2 mm", "overlap", true)]
    [InlineData("3.6 mm", "overlap", true)]
    [InlineData("4.0 mm", "overlap", true)]
    [InlineData("4.1 mm", "thickened", false)]
    public void F_PLF_02_Painful_and_healthy_heels_overlap(string thickness, string? value, bool isHeldWithoutTheComplaint)
    {
        Assert.Equal(value, Shipped.Read("plantar-fascia", $$""" "heel-pain": "present", "fascia-thickness": "{{thickness}}" """).ValueOf("fascia-size"));
        Assert.Equal(
            isHeldWithoutTheComplaint, Shipped.Read("plantar-fascia", $$""" "fascia-thickness": "{{thickness}}" """).Holds("fascia-size"));
    }

    // Cardinal et al. 1996: 16 of 19 painful heels were dark, one control was; re-angling decides whether the pattern counts.
    [Theory]
    [InlineData("persists", "texture-only", null)]
    [InlineData("resolves", null, "Apart from what is named below: No abnormality of the plantar fascia at the heel.")]
    public void F_PLF_02_A_dark_fascia_within_the_limit_is_not_called_normal(string reangled, string? value, string? calm)
    {
        var reading = Shipped.ReadStudy($$"""
            { "study": "T-1", "protocols": [{ "protocol": "heel", "side": "right" }], "subjects": [
              { "structure": "plantar-fascia", "side": "right", "findings": { "fascia-thickness": "3.8 mm", "heel-pain": "absent",
                "fascia-echo": "hypoechoic", "fascia-reangled": "{{reangled}}", "fibre-interruption": "absent" } } ] }
            """);

        Assert.Equal(value, reading.ValueOf("fascia-disease"));
        Assert.Equal(calm, reading.Calm);
    }

    // Aggarwal et al. 2020: more than 4 mm.
    [Theory]
    [InlineData("4.0 mm", null)]
    [InlineData("4.1 mm", "thickened")]
    public void F_PLF_03_Plantar_fascia(string thickness, string? value) =>
        Assert.Equal(value, Shipped.Read("plantar-fascia", $$""" "fascia-thickness": "{{thickness}}" """).ValueOf("fascia-size"));

    // Reference page on the sign; no guideline asks for the clip: department policy.
    [Theory]
    [InlineData("\"present\"", false)]
    [InlineData("\"absent\"", true)]
    [InlineData("\"not-assessable\"", true)]
    public void F_MOR_03_A_web_space_mass_waits_for_the_clip(string clip, bool isHeld)
    {
        var reading = Shipped.Read("third-web-space", $$""" "web-mass": "present", "plantar-shift": "present", "clip-recorded": {{clip}} """);

        Assert.Equal(isHeld, reading.Holds("web-lesion"));
        Assert.Equal(isHeld, reading.Offers("record-clip"));
        Assert.Equal(isHeld ? null : "suggests-neuroma", reading.ValueOf("web-lesion"));
    }

    // Park et al. 2011: the outline of a ginkgo leaf, biconcave, told neuromas from other masses; no shift excludes nothing.
    [Fact]
    public void F_MOR_06_A_biconcave_mass_without_shift_may_still_be_a_neuroma()
    {
        var reading = Shipped.Read("third-web-space", """ "web-mass": "present", "mass-shape": "biconcave", "plantar-shift": "absent" """);

        Assert.Equal("nature-open", reading.ValueOf("web-lesion"));
        Assert.Contains("not excluded", reading.TextOf("web-lesion"), StringComparison.Ordinal);
        Assert.Equal("biconcave", reading.ValueOf("web-outline"));
    }

    // PMID 25432459: the click felt by hand is another finding than the sonographic sign.
    [Fact]
    public void F_MOR_05_A_click_is_not_the_sonographic_sign()
    {
        var reading = Shipped.Read("third-web-space", """ "web-mass": "present", "clinical-click": "present" """);

        Assert.Null(reading.ValueOf("web-lesion"));
        Assert.True(reading.Offers("squeeze-manoeuvre"));
        Assert.True(reading.Warns("click-is-not-shift"));
    }

    // ACR Chronic Foot Pain 2020, variant 3.
    [Fact]
    public void F_MOR_07_MRI_after_a_negative_film_names_its_edition()
    {
        var reading = Shipped.Read("third-web-space", """ "web-mass": "absent", "web-symptoms": "present" """, """ "plain-film": "negative" """);

        var step = Assert.Single(reading.NextSteps, s => s.Step == "forefoot-mri");
        Assert.Contains("2020, variant 3; check the current edition", step.Text, StringComparison.Ordinal);
    }

    // Davis et al. 2015 and what follows from it: a negative scan does not exclude.
    [Fact]
    public void F_FB_03_A_negative_scan_does_not_exclude_a_body()
    {
        var reading = Shipped.Read("wound-site", """ "echogenic-body": "absent" """, """ "suspicion-persists": "present" """);

        Assert.Contains("does not exclude", reading.TextOf("body-finding"), StringComparison.Ordinal);
        Assert.True(reading.Warns("negative-scan"));
        Assert.True(reading.Offers("ct-or-mri"));
    }

    // The same review: a scan that could not be done, or against a film that shows the body, excludes still less.
    [Theory]
    [InlineData("absent", "positive", "not-seen")]
    [InlineData("not-assessable", "positive", "not-shown")]
    [InlineData("not-assessable", "negative", "not-shown")]
    [InlineData("present", "positive", "likely")]
    public void F_FB_01_The_film_and_the_scan_together(string body, string film, string value)
    {
        var reading = Shipped.Read("wound-site", $$""" "echogenic-body": "{{body}}" """, $$""" "radiograph": "{{film}}" """);

        Assert.Equal(value, reading.ValueOf("body-finding"));
        Assert.Equal(body != "present" && film == "positive" ? "recorded" : null, reading.ValueOf("body-on-film"));
    }

    // Courter 1990: 99 % of glass of 2 mm on two views, 83 % of 1 mm, 61 % of 0.5 mm.
    [Theory]
    [InlineData("1.9 mm", "two-or-more", "not-excluded")]
    [InlineData("2.0 mm", "two-or-more", "unlikely")]
    [InlineData("2.0 mm", "one", "one-view")]
    public void F_FB_04_Glass_and_a_negative_film(string size, string views, string value)
    {
        var reading = Shipped.ReadFacts(
            $$""" "suspected": "glass", "radiograph": "negative", "radiograph-views": "{{views}}", "fragment-size": "{{size}}" """);

        Assert.Equal(value, reading.ValueOf("glass-on-film"));
        Assert.True(reading.Offers("ultrasound"));
    }

    // Textbook chapter and T-09: wood and small glass can be missing from a film.
    [Theory]
    [InlineData("wood", true)]
    [InlineData("glass", true)]
    [InlineData("plastic", true)]
    [InlineData("unclear", true)]
    [InlineData("metal", false)]
    public void F_FB_06_A_negative_film_asks_for_ultrasound(string material, bool isOffered) =>
        Assert.Equal(isOffered, Shipped.ReadFacts($$""" "radiograph": "negative", "suspected": "{{material}}" """).Offers("ultrasound"));

    // Teaching pages disagree on the artefact of wood.
    [Theory]
    [InlineData("shadow")]
    [InlineData("reverberation")]
    public void F_FB_09_The_artefact_does_not_decide_the_material(string artefact)
    {
        var reading = Shipped.Read("wound-site", $$""" "echogenic-body": "present", "posterior-artefact": "{{artefact}}" """);

        Assert.True(reading.Warns("artefact-is-not-material"));
        Assert.DoesNotContain(reading.Suggestions, s => s.Text.Contains("wood", StringComparison.Ordinal) || s.Text.Contains("glass", StringComparison.Ordinal));
    }

    // British Sarcoma Group 2019 (more than 5 cm), a Scottish document of 2025 (5 cm or more); the pack takes the latter.
    [Theory]
    [InlineData("4.9 cm", "absent", "no-feature")]
    [InlineData("5.0 cm", "absent", "feature-present")]
    [InlineData("5.1 cm", "absent", "feature-present")]
    [InlineData("6.0 cm", "present", "lipoma-without-feature")]
    public void F_STM_01_Size_of_a_mass(string size, string lipoma, string? value)
    {
        var reading = Shipped.Read("lower-limb-soft-tissue", $$"""
            "lump": "present", "lump-size": "{{size}}", "plain-lipoma": "{{lipoma}}", "growing": "absent",
            "lump-painful": "absent", "lump-depth": "superficial", "recurrent": "absent"
            """);

        Assert.Equal(value, reading.ValueOf("lump-referral"));
        Assert.Equal(value == "feature-present", reading.Offers("sarcoma-pathway"));
        Assert.Equal(size == "5.0 cm", reading.Warns("mass-guidance-differs"));
        Assert.Equal("recorded", reading.ValueOf("lump-noted"));
    }

    // NICE NG12 by way of a summary, British Sarcoma Group: growth, pain, depth, recurrence, whatever the size.
    [Theory]
    [InlineData("growing", "present")]
    [InlineData("lump-painful", "present")]
    [InlineData("lump-depth", "deep")]
    [InlineData("recurrent", "present")]
    public void F_STM_02_Features_that_do_not_need_a_size(string finding, string value)
    {
        var reading = Shipped.Read("upper-limb-soft-tissue", $$""" "lump": "present", "{{finding}}": "{{value}}" """);

        Assert.True(reading.Offers("sarcoma-pathway"));
    }
}
