using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Studies;

/// <summary>The forms that members of a study have; each that does not fit is one message.</summary>
internal static class Members
{
    public static MappingNode? AsObject(DocumentNode node, string what, StudyContext context) =>
        node as MappingNode ?? Refuse<MappingNode>(node, what, "an object", context);

    public static ListNode? AsList(DocumentNode node, string what, StudyContext context) =>
        node as ListNode ?? Refuse<ListNode>(node, what, "a list", context);

    public static ScalarNode? AsText(DocumentNode node, string what, StudyContext context) =>
        node is ScalarNode { IsText: true, IsNothing: false } text ? text : Refuse<ScalarNode>(node, what, "a text", context);

    public static bool AsTrueOrFalse(DocumentNode node, string what, StudyContext context)
    {
        if (node is ScalarNode { AsTrueOrFalse: { } known }) return known;
        Refuse<ScalarNode>(node, what, "`true` or `false`", context);
        return false;
    }

    /// <summary>Says that a member is not known, or why it must never be; what was read so far goes on unchanged.</summary>
    public static T Unknown<T>(T sofar, ScalarNode name, string where, IReadOnlyCollection<string> known, StudyContext context)
    {
        context.Messages.Add(IdentityWords.Includes(name.Value)
            ? StudyMessages.IdentityMember(name.Location, Shown.Briefly(name.Value))
            : StudyMessages.UnknownMember(name.Location, Shown.Briefly(name.Value), where, known));
        return sofar;
    }

    /// <summary>Says that a member is not there, unless one that is misspelt stands for it: that was said.</summary>
    public static void Missing(
        DocumentNode node, MappingNode members, string where, string member, IReadOnlyCollection<string> known, StudyContext context)
    {
        if (members.Entries.Any(e => !known.Contains(e.Key.Value) && Spelling.Closest(e.Key.Value, known) == member)) return;
        context.Messages.Add(StudyMessages.MissingMember(node.Opening, where, member));
    }

    public static T? Refuse<T>(DocumentNode node, string what, string expected, StudyContext context) where T : DocumentNode
    {
        if (node is not BrokenNode) context.Messages.Add(StudyMessages.WrongForm(node.Opening, what, node.Form, expected));
        return null;
    }
}
