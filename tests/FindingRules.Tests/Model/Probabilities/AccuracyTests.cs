using FindingRules.Model.Probabilities;
using FindingRules.Model.Quantities;
using Xunit;

namespace FindingRules.Tests.Model.Probabilities;

/// <summary>Probabilities against published 2×2 tables, worked examples and the figures computed from them (C).</summary>
public sealed class AccuracyTests
{
    private const string Something = "something";

    /// <summary>Facts F-2X2-01 to F-2X2-08; an empty text stands for a ratio without limit. Sources: as named with each fact.</summary>
    [Theory]
    [InlineData(9, 17, 2, 66, "0.8182", "0.7952", "0.3462", "0.9706", "3.9947", "0.2287")] // F-2X2-01, PMID 25636987
    [InlineData(45, 1, 54, 332, "0.4545", "0.997", "0.9783", "0.8601", "151.3636", "0.5471")] // F-2X2-02, PMID 30271779
    [InlineData(12, 0, 8, 29, "0.6", "1", "1", "0.7838", "", "0.4")] // F-2X2-03, Radiology 2004;230:234-242
    [InlineData(14, 3, 1, 47, "0.9333", "0.94", "0.8235", "0.9792", "15.5556", "0.0709")] // F-2X2-04, Radiology 1995;197:443
    [InlineData(21, 2, 0, 13, "1", "0.8667", "0.913", "1", "7.5", "0")] // F-2X2-05, AJR 2001;176:373-380
    [InlineData(21, 0, 0, 15, "1", "1", "1", "1", "", "0")] // F-2X2-06, the same
    [InlineData(48, 0, 2, 50, "0.96", "1", "1", "0.9615", "", "0.04")] // F-2X2-07, Pol J Radiol 2020;85:e375
    [InlineData(13, 9, 4, 94, "0.7647", "0.9126", "0.5909", "0.9592", "8.7516", "0.2578")] // F-2X2-08, Br J Sports Med 2005;39:423
    public void F_2X2_tables_give_the_published_figures(
        int tp, int fp, int fn, int tn, string se, string sp, string ppv, string npv, string positive, string negative)
    {
        var table = new TwoByTwo(Something, tp, fp, fn, tn);
        var rates = table.Rates!;
        Assert.Equal(
            [se, sp, ppv, npv, positive, negative],
            new[]
            {
                table.Sensitivity, table.Specificity, table.PositivePredictiveValue, table.NegativePredictiveValue,
                rates.PositiveLikelihoodRatio, rates.NegativeLikelihoodRatio,
            }.Select(v => v is { } value ? Text(value, 4) : ""));
        // In the table's own population the probability after is the predictive value.
        var prevalence = new Rational(tp + fn, tp + fp + fn + tn);
        Assert.Equal(table.PositivePredictiveValue, table.After(prevalence, isPositive: true));
        Assert.Equal(Rational.One - table.NegativePredictiveValue!.Value, table.After(prevalence, isPositive: false));
    }

    /// <summary>Section 9.4, computed from F-FB-01, F-ACC-03, F-MOR-01, F-MOR-02, F-CUB-01, F-CTS-01 and F-TEN-06.</summary>
    [Theory]
    [InlineData("0.72", "0.92", "0.5 0.7941 0.9 0.9545", "0.0327 0.1154 0.2333 0.4153")]
    [InlineData("0.81", "0.82", "0.3333 0.6585 0.8182 0.913", "0.0251 0.0903 0.1881 0.3509")]
    [InlineData("0.87", "0.88", "0.4462 0.7565 0.8788 0.9442", "0.0161 0.0595 0.1287 0.2563")]
    [InlineData("0.91", "0.854", "0.4092 0.7276 0.8617 0.9357", "0.0116 0.0432 0.0953 0.1974")]
    [InlineData("0.90", "0.88", "0.4545 0.7627 0.8824 0.9459", "0.0125 0.0464 0.102 0.2096")]
    [InlineData("0.85", "0.91", "0.512 0.8019 0.9043 0.9566", "0.018 0.066 0.1415 0.2778")]
    [InlineData("0.873", "0.833", "0.3674 0.6914 0.8394 0.9242", "0.0167 0.0613 0.1323 0.2624")]
    [InlineData("0.813", "0.956", "0.6725 0.8879 0.9487 0.9773", "0.0213 0.0773 0.1636 0.3134")]
    public void Probabilities_after_a_finding_are_those_computed_from_the_published_figures(
        string sensitivity, string specificity, string positive, string negative)
    {
        var accuracy = new SensitivitySpecificity(Something, Read(sensitivity), Read(specificity), null, null);
        string After(bool isPositive) => string.Join(' ', new[] { "0.1", "0.3", "0.5", "0.7" }
            .Select(before => Text(accuracy.After(Read(before), isPositive)!.Value, 4)));
        Assert.Equal(positive, After(isPositive: true));
        Assert.Equal(negative, After(isPositive: false));
    }

    /// <summary>F-ACC-08: pooled likelihood ratio 20.87 of MR arthrography, AAOS rotator cuff guideline; last row of section 9.4.</summary>
    [Theory]
    [InlineData("0.3", "0.8994")]
    [InlineData("0.5", "0.9543")]
    public void F_ACC_08_a_printed_ratio_is_used_as_printed(string before, string after)
    {
        var ratios = new LikelihoodRatios(Something, Read("20.87"), null);
        Assert.Equal(after, Text(ratios.After(Read(before), isPositive: true)!.Value, 4));
        Assert.Null(ratios.After(Read(before), isPositive: false));
    }

    /// <summary>F-PRB-01 and F-PRB-02: worked examples of a teaching calculator, araw.mede.uic.edu (percent as printed).</summary>
    [Theory]
    [InlineData(32, 49, 3, 28, "31", "40", "10")]
    [InlineData(25, 1, 1, 83, "24", "96", "1")]
    public void F_PRB_worked_examples_agree_after_rounding(int tp, int fp, int fn, int tn, string prior, string after, string afterNegative)
    {
        var table = new TwoByTwo(Something, tp, fp, fn, tn);
        var before = new Rational(tp + fn, tp + fp + fn + tn);
        string[] figures =
        [
            Text(before * 100, 0), Text(table.After(before, true)!.Value * 100, 0), Text(table.After(before, false)!.Value * 100, 0),
        ];
        Assert.Equal([prior, after, afterNegative], figures);
    }

    /// <summary>F-PRB-03: a calculator page prints 0.0566 because it rounds the odds in between; exact is 0.05725.</summary>
    [Fact]
    public void F_PRB_03_nothing_is_rounded_in_between()
    {
        var after = Accuracy.FromLikelihoodRatio(Read("0.012"), 5);
        Assert.Equal("0.05725", Text(after, 5));
        Assert.NotEqual("0.0566", Text(after, 4));
        Assert.Equal("0.5", Text(Accuracy.FromLikelihoodRatio(Read("0.1"), 9), 4));
    }

    [Fact]
    public void Certainty_before_stays_certainty_after()
    {
        var accuracy = new SensitivitySpecificity(Something, Read("0.72"), Read("0.92"), null, null);
        Assert.Equal(Rational.Zero, accuracy.After(Rational.Zero, isPositive: true));
        Assert.Equal(Rational.One, accuracy.After(Rational.One, isPositive: false));
    }

    private static Rational Read(string text) => Rational.TryRead(text, out var value) ? value : throw new FormatException(text);

    private static string Text(Rational value, int places) => value.Rounded(places).ToDecimalText(out _);
}
