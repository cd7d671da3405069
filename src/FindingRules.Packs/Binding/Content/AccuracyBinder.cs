using System.Globalization;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Probabilities;
using FindingRules.Model.Quantities;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Content;

/// <summary>
/// What a publication says of a finding's accuracy, in one of three forms: sensitivity and specificity, likelihood
/// ratios as printed, or the four counts of a 2×2 table.
/// </summary>
internal static class AccuracyBinder
{
    private static readonly string[] Rates = ["sensitivity", "specificity"];
    private static readonly string[] Intervals = ["sensitivity-interval", "specificity-interval"];
    private static readonly string[] Ratios = ["likelihood-ratio-positive", "likelihood-ratio-negative"];
    private static readonly string[] Counts = ["true-positive", "false-positive", "false-negative", "true-negative"];

    public static Accuracy? Bind(DocumentNode node, ScalarNode name, Fields owner, BindingContext context)
    {
        var fields = Fields.Of(
            node, $"`accuracy` of `{name.Value}`", name.Inside, context.Messages, ["of"],
                [.. Rates, .. Intervals, .. Ratios, .. Counts]);
        var accuracy = fields is null ? null : Bind(fields, name, context);
        if (fields is not { IsSound: true }) owner.Spoil();
        return accuracy;
    }

    private static Accuracy? Bind(Fields fields, ScalarNode name, BindingContext context)
    {
        var of = fields.Words("of") ?? "";
        var forms = new[] { Rates.Concat(Intervals).Any(fields.Has), Ratios.Any(fields.Has), Counts.Any(fields.Has) };
        var isWhole = forms is [true, false, false] ? Rates.All(fields.Has)
            : forms is [false, false, true] ? Counts.All(fields.Has)
            : forms is [false, true, false];
        if (!isWhole)
        {
            fields.Report(PackMessages.AccuracyNotWhole(name.Inside, name.Value));
            return null;
        }
        if (forms[2]) return Table(fields, of);
        return forms[1]
            ? new LikelihoodRatios(of, Ratio(fields, Ratios[0], context), Ratio(fields, Ratios[1], context))
            : SensitivityAndSpecificity(fields, of, context);
    }

    private static SensitivitySpecificity? SensitivityAndSpecificity(Fields fields, string of, BindingContext context)
    {
        var (sensitivity, specificity) = (Share(fields, Rates[0], context), Share(fields, Rates[1], context));
        var (first, second) = (Range(fields, Intervals[0], sensitivity, context), Range(fields, Intervals[1], specificity, context));
        return sensitivity is { } se && specificity is { } sp ? new SensitivitySpecificity(of, se, sp, first, second) : null;
    }

    private static Rational? Share(Fields fields, string key, BindingContext context)
    {
        if (Quantity(fields, key, Unit.Percent, context) is not { } share) return null;
        if (share >= Rational.Zero && share <= Rational.One) return share;
        fields.Report(PackMessages.NotAShare(fields.Text(key)!.Inside, key));
        return null;
    }

    private static Rational? Ratio(Fields fields, string key, BindingContext context)
    {
        if (Quantity(fields, key, Unit.Plain, context) is not { } ratio) return null;
        if (ratio >= Rational.Zero) return ratio;
        fields.Report(PackMessages.NotAShare(fields.Text(key)!.Inside, key));
        return null;
    }

    private static Rational? Quantity(Fields fields, string key, Unit unit, BindingContext context)
    {
        if (fields.Text(key) is not { } text) return null;
        var quantity = context.Read(language => language.ReadQuantity(text.Text, unit));
        if (quantity is null) fields.Spoil();
        return quantity?.InBase;
    }

    /// <summary>An interval must hold the figure that it is of.</summary>
    private static Interval? Range(Fields fields, string key, Rational? figure, BindingContext context)
    {
        if (fields.Text(key) is not { } text) return null;
        var range = context.Read(language => language.ReadRange(text.Text, Unit.Percent));
        if (range is null) fields.Spoil();
        else if (figure is { } value
            && !range.Value.Contains(value)) fields.Report(PackMessages.FigureOutsideInterval(text.Inside, key));
        return range;
    }

    private static TwoByTwo? Table(Fields fields, string of)
    {
        var counts = Counts.Select(key => Count(fields, key)).ToArray();
        return counts is [{ } tp, { } fp, { } fn, { } tn] ? new TwoByTwo(of, tp, fp, fn, tn) : null;
    }

    private static int? Count(Fields fields, string key)
    {
        if (fields.Text(key) is not { } text) return null;
        if (int.TryParse(text.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var count)) return count;
        fields.Report(PackMessages.NotNumberOfPeople(text.Inside, key, Shown.Briefly(text.Value)));
        return null;
    }
}
