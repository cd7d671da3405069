using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>Subjects in the order in which the study's protocols scan them; the others follow by name.</summary>
internal static class ReportOrder
{
    public static Dictionary<Subject, int> Of(Study study)
    {
        var order = new Dictionary<Subject, int>();
        foreach (var use in study.Protocols.OrderBy(u => u.Protocol.Name, StringComparer.Ordinal).ThenBy(u => u.Side))
            foreach (var item in use.Protocol.Required.Concat(use.Protocol.AsIndicated))
                order.TryAdd(new Subject(item.Structure, item.Structure.IsPaired ? use.Side : Side.None, null), order.Count);
        return order;
    }
}
