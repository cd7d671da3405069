using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Studies;

/// <summary>A measured quantity, as one text or as value, unit and comparator; checked against what is plausible.</summary>
internal static class MeasureReader
{
    private static readonly string[] Known = ["value", "unit", "comparator"];
    private static readonly string[] Comparators = ["<", "<=", ">=", ">"];

    public static MeasuredValue? Read(DocumentNode node, Finding finding, MeasureType type, StudyContext context)
    {
        if (node is BrokenNode) return null;
        if (node is MappingNode members) return ReadParts(node, members, finding, type, context);
        if (node is not ScalarNode { IsNothing: false } word || !(word.IsText || word.IsNumber))
        {
            context.Messages.Add(StudyMessages.NotAQuantity(node.Opening, finding.Name, Example(type)));
            return null;
        }
        var read = QuantityText.Read(word.Value, UnitUnsaid(type));
        if (read.Problem == QuantityProblem.None) return MeasureChecks.Check(read, word.Location, word.Inside, finding, type, context);
        context.Messages.Add(MeasureChecks.Explain(read, word, finding, type));
        return null;
    }

    // A plain number has no unit to say; everything else, a share too, must say it.
    private static Unit? UnitUnsaid(MeasureType type) => type.Unit == Unit.Plain ? Unit.Plain : null;

    public static string Example(MeasureType type) =>
        Quantity.FromBase(type.Plausible.High ?? type.Plausible.Low ?? Rational.One, type.Unit).ToString();

    private static MeasuredValue? ReadParts(
        DocumentNode node, MappingNode members, Finding finding, MeasureType type, StudyContext context)
    {
        var what = $"the quantity `{finding.Name}`";
        foreach (var (name, _) in members.Entries)
            if (!Known.Contains(name.Value))
                Members.Unknown(0, name, what, Known, context);
        if (members.Find("value") is not { } value)
        {
            Members.Missing(node, members, what, "value", Known, context);
            return null;
        }
        var number = ReadNumber(value, finding, type, context);
        var unit = ReadUnit(members.Find("unit"), value, finding, type, context);
        var comparator = ReadComparator(members.Find("comparator"), context);
        if (number is null || unit is null || comparator is null) return null;
        var read = new QuantityReading { First = new Quantity(number.Value, unit), Comparator = comparator.Value };
        return MeasureChecks.Check(read, node.Location, null, finding, type, context);
    }

    private static Rational? ReadNumber(DocumentNode node, Finding finding, MeasureType type, StudyContext context)
    {
        if (node is BrokenNode) return null;
        if (node is ScalarNode word && (word.IsText || word.IsNumber))
        {
            var problem = QuantityText.ReadNumber(word.Value, out var number);
            if (problem == QuantityProblem.None) return number;
            if (problem == QuantityProblem.TooManyDigits)
            {
                context.Messages.Add(StudyMessages.TooManyDigits(word.Location, finding.Name, Rational.MostDigits));
                return null;
            }
        }
        context.Messages.Add(StudyMessages.NotAQuantity(node.Opening, finding.Name, Example(type)));
        return null;
    }

    private static Unit? ReadUnit(DocumentNode? node, DocumentNode value, Finding finding, MeasureType type, StudyContext context)
    {
        if (node is null)
        {
            if (UnitUnsaid(type) is { } unsaid) return unsaid;
            context.Messages.Add(StudyMessages.NoUnit(
                value.Location, finding.Name, value is ScalarNode word ? Shown.Briefly(word.Value) : "", type.Unit.Name));
            return null;
        }
        if (Members.AsText(node, "`unit`", context) is not { } name) return null;
        if (Unit.Find(name.Value) is { } unit) return unit;
        context.Messages.Add(StudyMessages.UnknownUnit(
            name.Inside, finding.Name, Shown.Briefly(name.Value), MeasureChecks.UnitNames(type.Unit.Dimension)));
        return null;
    }

    private static QuantityComparator? ReadComparator(DocumentNode? node, StudyContext context)
    {
        if (node is null) return QuantityComparator.None;
        if (Members.AsText(node, "`comparator`", context) is not { } word) return null;
        var index = Array.IndexOf(Comparators, word.Value);
        if (index < 0) context.Messages.Add(StudyMessages.UnknownComparator(word.Location, Shown.Briefly(word.Value)));
        return index switch
        {
            0 => QuantityComparator.Below,
            1 => QuantityComparator.AtMost,
            2 => QuantityComparator.AtLeast,
            3 => QuantityComparator.Above,
            _ => null,
        };
    }
}
