using FindingRules.Model.Conditions;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
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
        new Axis("qqq-axis", ["one", "two"], Here), new Expected("qqq-1", Here), Interval.Point(2), Severity.Error,
        new Case("CASE-QQQ", "qqq", new Study { Key = "QQQ-1", Location = Here }, new CaseExpectation(), Here),
        new Rule("QQQ-1", Scope, new SignStatement(Place.Own, Finding, Here), [], Here)
        {
            Text = "qqq-finding → qqq", Because = "qqq", Revision = "0123456789ab",
        },
    ];

    public static object? Of(Type type) => Array.Find(All, type.IsInstanceOfType);
}
