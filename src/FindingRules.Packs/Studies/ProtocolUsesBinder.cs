using System.Collections.Immutable;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Studies;

/// <summary>Which protocols a study followed, and on which side.</summary>
internal static class ProtocolUsesBinder
{
    private const string Where = "a protocol of a study";

    private static readonly string[] Known = ["protocol", "side"];

    public static ImmutableArray<ProtocolUse> Bind(DocumentNode node, StudyContext context)
    {
        if (Members.AsList(node, "`protocols`", context) is not { } list) return [];
        var uses = ImmutableArray.CreateBuilder<ProtocolUse>(list.Items.Count);
        foreach (var item in list.Items)
        {
            if (BindOne(item, context) is not { } use) continue;
            var first = uses.FirstOrDefault(u => u.Protocol == use.Protocol && u.Side == use.Side);
            if (first is null) uses.Add(use);
            else context.Messages.Add(StudyMessages.DuplicateProtocol(use.Location, use.Protocol.Name, first.Location));
        }
        uses.Sort((a, b) => a.Protocol == b.Protocol ? a.Side - b.Side : string.CompareOrdinal(a.Protocol.Name, b.Protocol.Name));
        return uses.ToImmutable();
    }

    private static ProtocolUse? BindOne(DocumentNode node, StudyContext context)
    {
        if (Members.AsObject(node, Where, context) is not { } members) return null;
        foreach (var (name, _) in members.Entries)
            if (!Known.Contains(name.Value))
                Members.Unknown(0, name, Where, Known, context);
        if (members.Find("protocol") is not { } named)
        {
            Members.Missing(node, members, Where, "protocol", Known, context);
            return null;
        }
        if (Members.AsText(named, "`protocol`", context) is not { } word) return null;
        if (!context.Protocols.TryGetValue(word.Value, out var protocol))
        {
            context.Messages.Add(StudyMessages.UnknownProtocol(word.Location, Shown.Briefly(word.Value), [.. context.Protocols.Keys]));
            return null;
        }
        return BindSide(node, members, protocol, context) is { } side ? new ProtocolUse(protocol, side, node.Location) : null;
    }

    private static Side? BindSide(DocumentNode node, MappingNode members, Protocol protocol, StudyContext context)
    {
        var isPaired = protocol.Required.Any(i => i.Structure.IsPaired) || protocol.AsIndicated.Any(i => i.Structure.IsPaired);
        if (members.Find("side") is { } sent) return SideReader.Read(sent, protocol.Name, isPaired, context);
        if (!isPaired) return Side.None;
        context.Messages.Add(StudyMessages.ProtocolNeedsSide(node.Opening, protocol.Name));
        return null;
    }
}
