using FindingRules.Model.Readings;
using Xunit;

namespace FindingRules.Tests.ShippedPack;

/// <summary>Achilles, patellar tendon and joints; each test is named after its fact.</summary>
public sealed class TendonAndJointTests
{
    // J Clin Med 2021;10:4092: more than 7.0 mm, athletes of one university.
    [Theory]
    [InlineData("7.0 mm", null)]
    [InlineData("7.1 mm", "above-7")]
    public void F_TEN_06_Patellar_tendon(string thickness, string? value)
    {
        var reading = Shipped.Read("patellar-tendon", $$""" "proximal-thickness": "{{thickness}}" """);

        Assert.Equal(value, reading.ValueOf("patellar-size"));
        Assert.Equal(value is not null, reading.Warns("athletes-only"));
    }

    // van der Vlist et al. 2020: 1.53 points are the smallest real change.
    [Theory]
    [InlineData("1", "2", null, true)]
    [InlineData("1", "3", "more", false)]
    [InlineData("4", "2", "less", false)]
    [InlineData("2", "2", null, false)]
    public void F_TEN_02_Change_of_neovascularity(string before, string now, string? change, bool isWithinError)
    {
        var reading = Shipped.ReadStudy($$"""
            { "study": "T-1", "subjects": [{{Shipped.Subject("achilles", "left", $$""" "neovascularity": { "value": {{now}}, "unit": "1" } """)}}],
              "earlier": { "subjects": [{{Shipped.Subject("achilles", "left", $$""" "neovascularity": { "value": {{before}}, "unit": "1" } """)}}] } }
            """);

        Assert.Equal(change, reading.ValueOf("neovessel-change"));
        Assert.Equal(isWithinError, reading.Warns("change-within-error"));
    }

    // Sleeswijk Visser, thesis, table 3: upper limit of the midportion by age and sex.
    [Theory]
    [InlineData(20, "6.0", "5.6")]
    [InlineData(30, "6.4", "6.0")]
    [InlineData(40, "6.8", "6.4")]
    [InlineData(50, "7.2", "6.8")]
    [InlineData(60, "7.6", "7.2")]
    [InlineData(70, "8.0", "7.6")]
    [InlineData(80, "8.4", "8.0")]
    public void F_TEN_08_Achilles_limits_by_age_and_sex(int age, string men, string women)
    {
        Assert.Null(Achilles(men, age, "male"));
        Assert.Equal("above-limit-man", Achilles(Tenth(men), age, "male"));
        Assert.Null(Achilles(women, age, "female"));
        Assert.Equal("above-limit-woman", Achilles(Tenth(women), age, "female"));
    }

    // The same thesis: a flat 6 mm calls many healthy older men abnormal; outside 20 to 80 years nothing was read.
    [Fact]
    public void F_TEN_07_A_flat_limit_is_not_used()
    {
        var reading = AchillesReading("7.4", 60, "male");

        Assert.Empty(reading.Suggestions);
        Assert.True(reading.Warns("within-limit-for-age"));
        Assert.True(AchillesReading("7.4", 15, "male").Warns("no-limit-for-age"));
    }

    // The same thesis: the measuring error at the insertion exceeds the difference.
    [Fact]
    public void F_TEN_09_The_insertion_alone_carries_nothing()
    {
        var reading = Shipped.Read("achilles", """ "insertion-thickness": "5.7 mm" """);

        Assert.Empty(reading.Suggestions);
        Assert.True(reading.Warns("insertion-alone"));
    }

    // The same table: no age and neither sex has more than 5.7 mm; a calm line beside more would hide it.
    [Theory]
    [InlineData("5.7 mm", "No abnormality of the Achilles tendon.")]
    [InlineData("9 mm", null)]
    public void F_TEN_08_An_insertion_above_each_limit_is_not_called_normal(string insertion, string? calm)
    {
        var reading = Shipped.ReadStudy($$"""
            { "study": "T-1", "protocols": [{ "protocol": "achilles", "side": "right" }], "facts": { "age": "45 years", "sex": "male" },
              "subjects": [{ "structure": "achilles", "side": "right", "findings": { "midportion-thickness": "5 mm", "echo": "fibrillar",
                "discontinuity": "absent", "insertion-thickness": "{{insertion}}" } }] }
            """);

        Assert.EndsWith(calm ?? "", reading.Calm ?? "", StringComparison.Ordinal);
        Assert.Equal(calm is null, reading.Calm is null);
    }

    // Table 3 of the thesis: limits at the insertion from 4.2 mm; above the lowest the caution stands beside any midportion.
    [Theory]
    [InlineData("4.2 mm", false)]
    [InlineData("4.3 mm", true)]
    public void F_TEN_08_A_thick_insertion_beside_a_normal_midportion(string insertion, bool warns) => Assert.Equal(
        warns,
        Shipped.Read("achilles", $$""" "insertion-thickness": "{{insertion}}", "midportion-thickness": "5 mm" """).Warns("insertion-alone"));

    // Westin et al. 2016: more than 5 mm, more than 10 mm; the ankle's position belongs to the gap.
    [Theory]
    [InlineData("5.0 mm", "up-to-5")]
    [InlineData("5.1 mm", "above-5")]
    [InlineData("10.0 mm", "above-5")]
    [InlineData("10.1 mm", "above-10")]
    public void F_ACH_01_Gap_of_a_ruptured_tendon(string gap, string value)
    {
        var findings = $$""" "discontinuity": "present", "reangled": "persists", "stump-gap": "{{gap}}" """;

        Assert.True(Shipped.Read("achilles", findings).Holds("achilles-gap"));
        Assert.Equal(value, Shipped.Read("achilles", findings + """, "ankle-position": "neutral" """).ValueOf("achilles-gap"));
    }

    // OMERACT definitions: fluid moves and gives way, synovial tissue does neither.
    [Theory]
    [InlineData("present", "present", "absent", "effusion")]
    [InlineData("absent", "absent", "present", "synovial-hypertrophy")]
    [InlineData("absent", "absent", "absent", "synovial-hypertrophy")]
    [InlineData("present", "absent", "absent", "mixed")]
    [InlineData("present", "present", "present", "mixed")]
    public void F_JNT_01_Content_of_a_recess(string displaceable, string compressible, string vessels, string content)
    {
        var reading = Shipped.Read("knee-joint", $$"""
            "recess-distended": "present", "displaceable": "{{displaceable}}",
            "compressible": "{{compressible}}", "joint-vessels": "{{vessels}}"
            """);

        Assert.Equal(content, reading.ValueOf("recess-content"));
    }

    // RMD Open table: less than half is 2, more than half is 3; exactly half is the pack's choice.
    [Theory]
    [InlineData("49 %", "grade-2")]
    [InlineData("50 %", "grade-2")]
    [InlineData("51 %", "grade-3")]
    public void F_JNT_02_Power_Doppler_at_half_of_the_area(string area, string grade)
    {
        var reading = Shipped.Read("wrist-joint", $$""" "doppler-spots": "confluent", "doppler-area": "{{area}}" """);

        Assert.Equal(grade, reading.ValueOf("synovial-doppler"));
    }

    private static string Tenth(string limit) => limit[^1] == '9' ? throw new ArgumentException(limit) : limit[..^1] + (char)(limit[^1] + 1);

    private static string? Achilles(string thickness, int age, string sex) =>
        AchillesReading(thickness, age, sex).ValueOf("achilles-size");

    private static Reading AchillesReading(string thickness, int age, string sex) =>
        Shipped.Read("achilles", $$""" "midportion-thickness": "{{thickness}} mm" """, $$""" "age": "{{age}} years", "sex": "{{sex}}" """);
}
