using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Quantities;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Vocabularies;

internal static class UnitBinder
{
    public static Unit? Bind(Fields fields, string key)
    {
        if (fields.Text(key) is not { } text) return null;
        if (Unit.Find(text.Value) is { } unit) return unit;
        fields.Report(PackMessages.UnknownUnit(text.Inside, Shown.Briefly(text.Value), [.. Unit.All.Select(u => u.Name)]));
        return null;
    }
}
