using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Readings;

namespace FindingRules.Engine.Reporting;

/// <summary>Probabilities after a finding, of the rules that stand, from the probability before and a reference's figures.</summary>
internal static class ProbabilityWriter
{
    public static ImmutableArray<ProbabilityNote> Write(Decided decided)
    {
        var notes = ImmutableArray.CreateBuilder<ProbabilityNote>();
        foreach (var rule in decided.Live)
        {
            if (rule.State.Standing != Standing.Stands) continue;
            foreach (var conclusion in rule.Rule.Conclusions)
                if (conclusion is ProbabilityConclusion probability && rule.IsPublished && Note(decided, rule, probability) is { } note)
                    notes.Add(note);
        }
        return notes.DrainToImmutable();
    }

    /// <summary>Findings without which a standing rule cannot state its probability.</summary>
    public static ImmutableArray<MissingKey> MissingBefore(RuleAt rule)
    {
        var missing = new Once<MissingKey>();
        foreach (var conclusion in rule.Rule.Conclusions)
            if (conclusion is ProbabilityConclusion probability && ValueOf(rule, probability) is null)
                missing.AddAll(MissingFinder.Of(rule, probability.Before, rule.Examination.Network.Before[probability]));
        return missing.ToImmutable();
    }

    private static ProbabilityNote? Note(Decided decided, RuleAt rule, ProbabilityConclusion conclusion)
    {
        if (conclusion.Reference.Accuracy is not { } accuracy || ValueOf(rule, conclusion) is not { } before) return null;
        if (accuracy.After(before, conclusion.IsPositive) is not { } after) return null;
        var finding = conclusion.IsPositive ? "positive" : "negative";
        var range = accuracy.Range(before, conclusion.IsPositive) is { } r ? $"{Percent(r.Low)} to {Percent(r.High)}" : null;
        var where = rule.Instance.Subject.Structure is null ? "" : $" at the {rule.Instance.Subject.Title}";
        var given = conclusion.IsPositive ? "this positive finding" : "a finding against it";
        var text = $"Probability of {accuracy.Of} after {given}{where}: {Percent(after)}"
            + (range is null ? "" : $" ({range} over the published intervals)")
            + $", from {Sent(before)} before; figures used: {accuracy.Figures}, {conclusion.Reference.Cites.TrimEnd('.')}.";
        return new ProbabilityNote(
            text, rule.Instance.Subject.Key, accuracy.Of, finding, Sent(before), Percent(after), Fraction(after), range,
            accuracy.Figures, [rule.Reference], decided.EvidenceOf(rule), SourceNotes.Of([conclusion.Reference]));
    }

    /// <summary>One exact probability; a bound or a number outside 0 to 1 is none.</summary>
    private static Rational? ValueOf(RuleAt rule, ProbabilityConclusion conclusion) =>
        rule.Examination.Network.Before[conclusion].ValueAt(rule.Examination, rule.Index) is { IsPoint: true, Low: { } before }
        && before >= Rational.Zero && before <= Rational.One
            ? before
            : null;

    private static string Fraction(Rational value) =>
        value.Denominator.IsOne ? value.Numerator.ToString() : $"{value.Numerator}/{value.Denominator}";

    /// <summary>What was sent is repeated and not rounded, unless it was worked out and has no end.</summary>
    private static string Sent(Rational before) =>
        (before * 100).ToDecimalText(out var isExact) is var text && isExact ? $"{text} %" : Percent(before);

    /// <summary>To a tenth of a percent, rounded only here. Nothing is made impossible or certain by rounding.</summary>
    private static string Percent(Rational share) => (share * 1000).Rounded(0) switch
    {
        { IsZero: true } when !share.IsZero => "below 0.1 %",
        var tenths when tenths == 1000 && share != Rational.One => "above 99.9 %",
        var tenths => $"{(tenths / 10).ToDecimalText(out _)} %",
    };
}
