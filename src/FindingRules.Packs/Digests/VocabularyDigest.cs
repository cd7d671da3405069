using System.Diagnostics;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Packs.Digests;

/// <summary>The vocabulary's part of the meaning digest.</summary>
internal static class VocabularyDigest
{
    public static void Add(CanonicalText text, Vocabulary vocabulary)
    {
        foreach (var axis in vocabulary.Axes.Values) text.Add("axis", axis.Points.Prepend(axis.Name));
        foreach (var kind in vocabulary.Kinds.Values)
        {
            text.Add("kind", kind.Name, kind.Like?.Name);
            foreach (var finding in kind.Findings.Values) Add(text, "finding", finding);
        }
        foreach (var structure in vocabulary.Structures.Values)
            text.Add("structure", structure.Name, structure.Kind.Name, structure.Title, structure.Region, $"{structure.IsPaired}");
        foreach (var fact in vocabulary.StudyFacts.Values) Add(text, "fact", fact);
    }

    private static void Add(CanonicalText text, string word, Finding finding) =>
        text.Add(word, finding.Name, finding.Title, finding.Type.Word)
            .Add("type", finding.IsAbsentWhenNormal ? Parts(finding.Type).Append("normal none") : Parts(finding.Type));

    private static IEnumerable<string?> Parts(FindingType type) => type switch
    {
        ChoiceType choice =>
            choice.Values.Order(StringComparer.Ordinal).Append(choice.Normal is null ? "-" : $"normal {choice.Normal}"),
        SignType sign => [$"{sign.NormallyPresent}"],
        MeasureType measure =>
        [
            measure.Unit.Name, MeaningDigest.Show(measure.Plausible), MeaningDigest.Show(measure.Normal),
            $"{measure.Precision}", $"{measure.IsWhole}",
        ],
        ExtentType extent => [extent.Axis.Name, $"{extent.NormallyNone}"],
        _ => throw new UnreachableException(),
    };
}
