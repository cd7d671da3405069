using System.Collections.Immutable;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Studies;

/// <summary>How far something reaches: a point, a stretch from one to another, a list of those, or none.</summary>
internal static class ExtentReader
{
    public const string None = "none";

    private static readonly string[] Known = ["from", "to"];

    public static ExtentValue? Read(DocumentNode node, Finding finding, ExtentType type, StudyContext context)
    {
        if (node is ScalarNode { IsText: true, Value: None }) return new ExtentValue(type.Axis, []);
        if (node is not ListNode list)
            return ReadStretch(node, finding, type.Axis, context) is { } only ? new ExtentValue(type.Axis, [only]) : null;
        if (list.Items.Count == 0)
        {
            context.Messages.Add(StudyMessages.WrongForm(
                list.Location, $"`{finding.Name}`", "an empty list", "`none`, a point, or stretches `from` one point `to` another"));
            return null;
        }
        var read = new List<(Stretch Stretch, DocumentNode Node)>(list.Items.Count);
        foreach (var item in list.Items)
            if (ReadStretch(item, finding, type.Axis, context) is { } stretch)
                read.Add((stretch, item));
        return read.Count == list.Items.Count ? Apart(read, finding, type.Axis, context) : null;
    }

    private static ExtentValue? Apart(List<(Stretch Stretch, DocumentNode Node)> read, Finding finding, Axis axis,
        StudyContext context)
    {
        read.Sort((a, b) => a.Stretch.From != b.Stretch.From
            ? a.Stretch.From.CompareTo(b.Stretch.From)
            : a.Node.Span.Start.CompareTo(b.Node.Span.Start));
        var stretches = ImmutableArray.CreateBuilder<Stretch>(read.Count);
        for (var i = 0; i < read.Count; i++)
        {
            // Points next to each other would read as one defect to a person and as two to a rule.
            if (i > 0 && read[i].Stretch.From <= read[i - 1].Stretch.To + 1)
            {
                context.Messages.Add(StudyMessages.ExtentOverlap(read[i].Node.Location, finding.Name, read[i - 1].Node.Location));
                return null;
            }
            stretches.Add(read[i].Stretch);
        }
        return new ExtentValue(axis, stretches.MoveToImmutable());
    }

    private static Stretch? ReadStretch(DocumentNode node, Finding finding, Axis axis, StudyContext context)
    {
        if (node is ScalarNode) return ReadPoint(node, finding, axis, context) is { } point ? new Stretch(point, point) : null;
        var what = $"a stretch of `{finding.Name}`";
        if (node is not MappingNode members)
        {
            Members.Refuse<MappingNode>(node, what, "a point, or `from` one point `to` another", context);
            return null;
        }
        foreach (var (name, _) in members.Entries)
            if (!Known.Contains(name.Value))
                Members.Unknown(0, name, what, Known, context);
        var from = End(node, members, "from", finding, axis, context);
        var to = End(node, members, "to", finding, axis, context);
        if (from is null || to is null) return null;
        if (from <= to) return new Stretch(from.Value, to.Value);
        context.Messages.Add(StudyMessages.ExtentOrder(node.Location, axis.Points[from.Value], axis.Points[to.Value]));
        return null;
    }

    private static int? End(DocumentNode node, MappingNode members, string end, Finding finding, Axis axis, StudyContext context)
    {
        if (members.Find(end) is { } sent) return ReadPoint(sent, finding, axis, context);
        Members.Missing(node, members, $"a stretch of `{finding.Name}`", end, Known, context);
        return null;
    }

    private static int? ReadPoint(DocumentNode node, Finding finding, Axis axis, StudyContext context)
    {
        if (Members.AsText(node, $"a point of `{finding.Name}`", context) is not { } word) return null;
        var index = axis.IndexOf(word.Value);
        if (index >= 0) return index;
        context.Messages.Add(ValueReader.IsFreeText(word.Value)
            ? StudyMessages.FreeText(word.Location, finding.Name)
            : StudyMessages.UnknownPoint(word.Inside, finding.Name, axis.Name, Shown.Briefly(word.Value), axis.Points));
        return null;
    }
}
