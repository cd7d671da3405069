using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Architecture.Tests.Messages;

/// <summary>One of each part of the model that a message may speak of.</summary>
internal static class ModelSamples
{
    private static readonly Location Here = new SourceText("vocabulary.yaml", "kinds:\n").Whole;
    private static readonly Finding Finding = new("qqq-finding", new SignType(false), Here);
    private static readonly Kind Kind = new("qqq-kind", null, Vocabulary.Empty.StudyFacts.Add(Finding.Name, Finding), Here);
    private static readonly Structure Structure = new("qqq-structure", Kind, "qqq structure", "qqq-region", true, Here);
    private static readonly Scope Scope = new("each qqq-kind", Kind, [Structure]);

    private static readonly object[] All =
    [
        Finding, Finding.Type, Kind, Structure, Scope, new Topic("qqq-topic", Scope, Here), Unit.Centimetre,
        Unit.Centimetre.Dimension, new Rational(7, 2), new Quantity(3, Unit.Centimetre),
        new Axis("qqq-axis", ["one", "two"], Here),
    ];

    public static object? Of(Type type) => Array.Find(All, type.IsInstanceOfType);
}
