using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Studies;

internal static class SideReader
{
    public static Side? Read(DocumentNode node, string structure, bool isPaired, StudyContext context)
    {
        if (Members.AsText(node, "`side`", context) is not { } word) return null;
        Side? side = word.Value switch { "left" => Side.Left, "right" => Side.Right, "midline" => Side.None, _ => null };
        if (side is null) context.Messages.Add(StudyMessages.UnknownSide(word.Location, Shown.Briefly(word.Value)));
        else if (side == Side.None == isPaired)
        {
            context.Messages.Add(StudyMessages.SideDoesNotFit(word.Location, structure, isPaired));
            return null;
        }
        return side;
    }
}
