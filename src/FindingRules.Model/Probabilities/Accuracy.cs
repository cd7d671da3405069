using FindingRules.Model.Quantities;

namespace FindingRules.Model.Probabilities;

/// <summary>
/// How well a finding tells those who have something from those who have not, as published. Sensitivity and specificity
/// are exact fractions of 1; from a 2×2 table they follow exactly.
/// </summary>
/// <param name="Of">What is found or excluded, as a sentence names it: a retained foreign body.</param>
public abstract record Accuracy(string Of)
{
    /// <summary>The figures, as the reading names them.</summary>
    public abstract string Figures { get; }

    /// <summary>
    /// Probability after the finding, by Bayes' theorem, exact; null where the figures do not say (a finding that they
    /// rule out was seen, or they give only the other likelihood ratio).
    /// Source: odds after = odds before × likelihood ratio (F-PRB-01, neoweb.org.uk; Fagan, N Engl J Med 1975;293:257).
    /// </summary>
    public abstract Rational? After(Rational before, bool isPositive);

    /// <summary>The lowest and highest probability that the published intervals allow, or null where there are none.</summary>
    public virtual (Rational Low, Rational High)? Range(Rational before, bool isPositive) => null;

    /// <summary>Probability after, from the odds before and a likelihood ratio, with nothing rounded in between.</summary>
    public static Rational FromLikelihoodRatio(Rational before, Rational ratio) =>
        before == Rational.One ? Rational.One : before * ratio / ((before * ratio) + (Rational.One - before));

    protected static string Percent(Rational share) => Quantity.FromBase(share, Unit.Percent).ToString();
}

/// <param name="SensitivityRange">The published interval, where there is one; closed.</param>
public sealed record SensitivitySpecificity(
    string Of, Rational Sensitivity, Rational Specificity, Interval? SensitivityRange, Interval? SpecificityRange) : Accuracy(Of)
{
    public override string Figures =>
        $"sensitivity {Percent(Sensitivity)}{Shown(SensitivityRange)}, specificity {Percent(Specificity)}{Shown(SpecificityRange)}";

    /// <summary>Null where it is without limit, because no one without the condition shows the finding.</summary>
    public Rational? PositiveLikelihoodRatio => Specificity == Rational.One ? null : Sensitivity / (Rational.One - Specificity);

    /// <summary>Null where it is without limit.</summary>
    public Rational? NegativeLikelihoodRatio => Specificity.IsZero ? null : (Rational.One - Sensitivity) / Specificity;

    public override Rational? After(Rational before, bool isPositive) => After(before, Sensitivity, Specificity, isPositive);

    public override (Rational Low, Rational High)? Range(Rational before, bool isPositive)
    {
        if (SensitivityRange is not { Low: { } seLow, High: { } seHigh }) return null;
        if (SpecificityRange is not { Low: { } spLow, High: { } spHigh }) return null;
        // Better figures raise the probability after a positive finding and lower it after a negative one.
        var worse = After(before, seLow, spLow, isPositive);
        var better = After(before, seHigh, spHigh, isPositive);
        if (worse is not { } w || better is not { } b) return null;
        return isPositive ? (w, b) : (b, w);
    }

    private static Rational? After(Rational before, Rational sensitivity, Rational specificity, bool isPositive)
    {
        var withIt = before * (isPositive ? sensitivity : Rational.One - sensitivity);
        var withoutIt = (Rational.One - before) * (isPositive ? Rational.One - specificity : specificity);
        var all = withIt + withoutIt;
        return all.IsZero ? null : withIt / all;
    }

    private static string Shown(Interval? range) =>
        range is { Low: { } low, High: { } high } ? $" ({Percent(low)} to {Percent(high)})" : "";
}

/// <summary>Likelihood ratios as printed, which pooled studies give apart from sensitivity and specificity.</summary>
public sealed record LikelihoodRatios(string Of, Rational? Positive, Rational? Negative) : Accuracy(Of)
{
    public override string Figures => string.Join(", ", new[]
    {
        Positive is { } positive ? $"likelihood ratio {positive.ToDecimalText(out _)} when positive" : null,
        Negative is { } negative ? $"likelihood ratio {negative.ToDecimalText(out _)} when negative" : null,
    }.OfType<string>()) + " (as printed)";

    public override Rational? After(Rational before, bool isPositive) =>
        (isPositive ? Positive : Negative) is { } ratio ? FromLikelihoodRatio(before, ratio) : null;
}

/// <summary>A 2×2 table of people with and without the condition who do and do not show the finding.</summary>
public sealed record TwoByTwo(string Of, int TruePositive, int FalsePositive, int FalseNegative, int TrueNegative) : Accuracy(Of)
{
    public Rational? Sensitivity => Share(TruePositive, FalseNegative);

    public Rational? Specificity => Share(TrueNegative, FalsePositive);

    /// <summary>Share of those who show the finding that have the condition.</summary>
    public Rational? PositivePredictiveValue => Share(TruePositive, FalsePositive);

    public Rational? NegativePredictiveValue => Share(TrueNegative, FalseNegative);

    public override string Figures =>
        $"{TruePositive} true and {FalsePositive} false positives, {FalseNegative} false and {TrueNegative} true negatives";

    /// <summary>The table as sensitivity and specificity; null where a column is empty.</summary>
    public SensitivitySpecificity? Rates =>
        Sensitivity is { } se && Specificity is { } sp ? new SensitivitySpecificity(Of, se, sp, null, null) : null;

    public override Rational? After(Rational before, bool isPositive) => Rates?.After(before, isPositive);

    private static Rational? Share(int part, int rest) => part + rest == 0 ? null : new Rational(part, part + rest);
}
