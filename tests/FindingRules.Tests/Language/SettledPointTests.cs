using FindingRules.Model.Packs;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Language;

/// <summary>The settled points of the design that the language decides, each by its name.</summary>
public sealed class SettledPointTests
{
    [Fact]
    public void Value_lists_are_one_membership_test()
    {
        Means("study", "suspected wood or glass", "study suspected is glass|wood");
        Means("study", "trauma and suspected wood or glass", "study suspected is glass|wood and study trauma");
        Means("each cuff-tendon", "tear-depth bursal-sided or articular-sided", "own topic tear-depth is articular-sided|bursal-sided");
    }

    [Fact]
    public void Value_lists_behind_not_offer_both_bracketings()
    {
        var reading = Reading.Condition("study", "suspected is not wood or glass");

        var message = Assert.Single(reading.Messages);
        Assert.Equal("FR2013", message.Code);
        Means("study", "not (suspected wood or glass)", "not study suspected is glass|wood");
        Means("study", "(not suspected wood) or suspected glass", "not study suspected is wood or study suspected is glass");
        Assert.Equal("write `not (suspected wood or glass)` or `(not suspected wood) or suspected glass`", message.Label);
    }

    [Fact]
    public void Sides_another_structure_needs_one()
    {
        Says("each biceps", "subscapularis thickness above 4 mm", "FR3101");
        Means("each biceps", "ipsilateral subscapularis thickness above 4 mm", "ipsilateral subscapularis thickness > 4 mm");
        Means("each biceps", "contralateral subscapularis thickness above 4 mm", "contralateral subscapularis thickness > 4 mm");
    }

    [Fact]
    public void Sides_evaluate_means_the_same_side_and_needs_one()
    {
        Assert.Equal("evaluate subscapularis", Reading.Rule("each biceps", "biceps subluxed → evaluate subscapularis").Conclusions);
        Assert.StartsWith("FR3405", Reading.Rule("study", "trauma → evaluate subscapularis").Said, StringComparison.Ordinal);
        Assert.Equal("evaluate linea", Reading.Rule("study", "trauma → evaluate linea", ExampleSymbols.Crowded).Conclusions);
    }

    [Fact]
    public void Sides_in_a_study_rule_a_structure_needs_a_quantifier()
    {
        var reading = Reading.Condition("study", "supraspinatus tear-depth full-thickness");

        var message = Assert.Single(reading.Messages);
        Assert.Equal("FR3102", message.Code);
        Means("study", message.Fix!.Replacement, "any [supraspinatus] where (own topic tear-depth is full-thickness)");
    }

    [Fact]
    public void Sides_contralateral_of_what_is_not_paired_is_an_error()
    {
        Says("each linea", "contralateral width above 3 mm", "FR3103");
        Says("each biceps", "contralateral linea width above 3 mm", "FR3103");
        Means("each biceps", "ipsilateral linea width above 3 mm", "ipsilateral linea width > 3 mm");
    }

    [Fact]
    public void Quantifiers_bind_their_condition_to_the_counted_structure()
    {
        Means("each biceps", "any cuff-tendon where (fluid reaches bursal)",
            "any [infraspinatus subscapularis supraspinatus] where (own fluid reaches bursal to bursal)");
        Says("each biceps", "any cuff-tendon where (position subluxed)", "FR3008");
    }

    [Fact]
    public void Assessed_applies_to_findings_and_structures_never_to_topics()
    {
        Means("each cuff-tendon", "fluid assessed", "own fluid assessed");
        Means("each biceps", "ipsilateral subscapularis assessed", "ipsilateral subscapularis assessed");
        Says("each cuff-tendon", "tear-depth assessed", "FR3206");
        Says("each cuff-tendon", "depth-share assessed", "FR3206");
    }

    [Fact]
    public void Numbers_are_exact_whatever_their_unit()
    {
        foreach (var same in new[] { "3 cm", "30 mm", "3.0 cm", "30.000 mm" })
            Means("each cuff-tendon", $"tear-length above {same}", "own tear-length > 30 mm");
        Says("each cuff-tendon", "tear-length above 3", "FR3301");
        Says("each cuff-tendon", $"tear-length above {new string('3', 29)} mm", "FR2009");
    }

    [Fact]
    public void Earlier_studies_are_spoken_of_with_earlier()
    {
        Means("each cuff-tendon", "earlier tear-length above 1 cm", "earlier own tear-length > 10 mm");
        Says("each cuff-tendon", "earlier tear-depth full-thickness", "FR3108");
    }

    [Fact]
    public void And_with_or_needs_brackets_and_both_are_offered()
    {
        var message = Assert.Single(Reading.Condition("each cuff-tendon", "shadowing and trauma or echo anechoic or hypoechoic").Messages);

        Assert.Equal("FR2012", message.Code);
        Assert.Equal("(shadowing and trauma) or echo anechoic or hypoechoic", message.Fix!.Replacement);
        Assert.Contains("`shadowing and (trauma or echo anechoic or hypoechoic)`", message.Label, StringComparison.Ordinal);
    }

    [Fact]
    public void Arrows_of_both_forms_are_the_same() => Assert.Equal(
        Reading.Rule("each tendon", "shadowing → thickened").Conclusions, Reading.Rule("each tendon", "shadowing -> thickened").Conclusions);

    private static void Means(string scope, string condition, string canonical)
    {
        var reading = Reading.Condition(scope, condition, SymbolsFor(scope, condition));
        Assert.Equal("", reading.Said);
        Assert.Equal(canonical, reading.Canonical);
    }

    private static void Says(string scope, string condition, string code) =>
        Assert.Equal([code], Reading.Condition(scope, condition, SymbolsFor(scope, condition)).Messages.Select(m => m.Code));

    private static Symbols SymbolsFor(string scope, string condition) =>
        (scope + condition).Contains("linea", StringComparison.Ordinal) ? ExampleSymbols.Crowded : ExampleSymbols.Plain;
}
