using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Quantities;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Vocabularies;

/// <summary>What a measure may be, how finely it is measured and what is normal; everything in base units.</summary>
internal static class MeasureBinder
{
    public static MeasureType? Bind(ScalarNode name, Fields fields, BindingContext context)
    {
        if (UnitBinder.Bind(fields, "measure") is not { } unit) return null;
        var plausible = Range(fields, "plausible", unit, context);
        if (plausible is { } range && (range.Low is null || range.High is null || range.IsEmpty))
            fields.Report(PackMessages.PlausibleIsOpen(fields.Text("plausible")!.Location, name.Value));
        var normal = FindingBinder.IsNone(fields) ? null : Range(fields, "normal", unit, context);
        if (fields.IsSound && normal is { } usual && !plausible!.Value.Contains(usual))
            fields.Report(PackMessages.NormalNotPlausible(fields.Text("normal")!.Location, name.Value));
        var precision = Precision(name, fields, unit, context);
        var isWhole = fields.Flag("whole") ?? false;
        return plausible is null ? null : new MeasureType(unit, plausible.Value, precision, normal, isWhole);
    }

    private static Interval? Range(Fields fields, string key, Unit unit, BindingContext context)
    {
        if (fields.Text(key) is not { } text) return null;
        var range = context.Read(language => language.ReadRange(text.Text, unit));
        if (range is null) fields.Spoil();
        return range;
    }

    private static Rational Precision(ScalarNode name, Fields fields, Unit unit, BindingContext context)
    {
        if (fields.Text("precision") is not { } text) return Rational.Zero;
        if (context.Read(language => language.ReadQuantity(text.Text, unit)) is not { } precision)
        {
            fields.Spoil();
            return Rational.Zero;
        }
        if (precision.InBase < Rational.Zero)
            fields.Report(PackMessages.NegativePrecision(text.Location, name.Value, precision.ToString()));
        return precision.InBase;
    }
}
