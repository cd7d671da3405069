using System.Diagnostics;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Studies;

/// <summary>One value of a finding, by the finding's type.</summary>
internal static class ValueReader
{
    private const int LongestCode = 64;
    private static readonly SignValue Present = new(true);
    private static readonly SignValue Absent = new(false);
    private static readonly NotAssessableValue NotAssessable = new();

    public static FindingValue? Read(DocumentNode node, Finding finding, StudyContext context)
    {
        if (node is ScalarNode { Value: NotAssessableValue.Word, IsText: true }) return NotAssessable;
        return finding.Type switch
        {
            ChoiceType choice => ReadChoice(node, finding, choice, context),
            SignType => ReadSign(node, finding, context),
            MeasureType measure => MeasureReader.Read(node, finding, measure, context),
            ExtentType extent => ExtentReader.Read(node, finding, extent, context),
            _ => throw new UnreachableException(),
        };
    }

    /// <summary>Something with spaces or of great length was written by a person, not chosen from a list.</summary>
    public static bool IsFreeText(string text) => text.Length > LongestCode || text.AsSpan().ContainsAny(' ', '\n');

    private static ChoiceValue? ReadChoice(DocumentNode node, Finding finding, ChoiceType type, StudyContext context)
    {
        if (node is not ScalarNode { IsText: true, IsNothing: false } word)
        {
            Members.Refuse<ScalarNode>(node, $"`{finding.Name}`", "one of its values", context);
            return null;
        }
        if (type.Values.Contains(word.Value)) return new ChoiceValue(word.Value);
        var hyphened = word.Value.ToLowerInvariant().Replace(' ', '-');
        context.Messages.Add(IsFreeText(word.Value) && !type.Values.Contains(hyphened)
            ? StudyMessages.FreeText(word.Location, finding.Name)
            : StudyMessages.UnknownValue(word.Inside, finding.Name, Shown.Briefly(word.Value), type.Values));
        return null;
    }

    private static string Found(DocumentNode node) =>
        node is ScalarNode { IsText: true, IsNothing: false } word ? $"`{Shown.Briefly(word.Value)}`" : node.Form;

    private static SignValue? ReadSign(DocumentNode node, Finding finding, StudyContext context)
    {
        if (node is ScalarNode { AsTrueOrFalse: { } known }) return known ? Present : Absent;
        if (node is ScalarNode { IsText: true, Value: "present" or "absent" } word) return word.Value == "present" ? Present : Absent;
        if (node is BrokenNode) return null;
        if (node is ScalarNode { IsText: true } text && IsFreeText(text.Value))
            context.Messages.Add(StudyMessages.FreeText(text.Location, finding.Name));
        else
            context.Messages.Add(StudyMessages.NotASign(node.Opening, finding.Name, Found(node)));
        return null;
    }
}
