using System.Text.Json.Nodes;
using FindingRules.Model.Packs;

namespace FindingRules.Schemas;

/// <summary>The examinations that a study says were done: one of anything paired was done on a side.</summary>
internal static class ProtocolPart
{
    public static JsonObject All(IEnumerable<Protocol> protocols)
    {
        var known = protocols.ToArray();
        var part = Part.Object("An examination that was done.", new JsonObject
        {
            ["protocol"] = Part.OneOf("Which one.", known.Select(p => (p.Name, p.Title))),
            ["side"] = Part.Words("The side that was examined.", ["left", "right", "midline"]),
        }, "protocol");
        part["allOf"] = new JsonArray([.. known.GroupBy(IsPaired).Select(SideOf)]);
        return Part.List("The examinations that were done. What they require and the study does not have is named in the answer.", part);
    }

    private static JsonObject SideOf(IGrouping<bool, Protocol> protocols)
    {
        var rule = Part.When("protocol", protocols.Select(p => p.Name), new JsonObject { ["side"] = Part.Sides(protocols.Key) });
        if (protocols.Key) rule["then"]!["required"] = Part.Strings(["side"]);
        return rule;
    }

    private static bool IsPaired(Protocol protocol) =>
        protocol.Required.Any(i => i.Structure.IsPaired) || protocol.AsIndicated.Any(i => i.Structure.IsPaired);
}
