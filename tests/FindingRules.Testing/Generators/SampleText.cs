using System.Text;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Testing.Generators;

/// <summary>A sample as a person debugs it.</summary>
public static class SampleText
{
    public static string Of(Sample sample) => $"{Of(sample.Pack)}{Of(sample.Study)}";

    public static string Of(Pack pack)
    {
        var text = new StringBuilder();
        foreach (var kind in pack.Vocabulary.Kinds.Values)
            text.AppendLine($"kind {kind.Name}: {string.Join("; ", kind.Findings.Values.Select(f => $"{f.Name} {Of(f.Type)}"))}");
        text.AppendLine($"structures: {string.Join(", ", pack.Vocabulary.Structures.Values.Select(s => $"{s.Name}{(s.IsPaired ? " (paired)" : "")}"))}");
        foreach (var topic in pack.Symbols.Topics.Values)
            text.AppendLine($"topic {topic.Name}: {topic.Scope.Written}{(topic.IsPerStructure ? " per structure" : "")}");
        foreach (var derived in pack.Symbols.DerivedMeasures.Values)
            text.AppendLine($"measure {derived.Name}: {derived.Scope.Written} is {ConditionText.Words(derived.Is)}");
        foreach (var rule in pack.Rules)
            text.AppendLine($"{(pack.IsInForce(rule) ? "" : "withdrawn ")}{rule.Id} {rule.Scope.Written}"
                + $"{(rule.IsPerStructure ? " per structure" : "")}: {ConditionText.Words(rule.Condition)} -> "
                + string.Join("; ", rule.Conclusions.Select(Of))
                + (rule.Over.IsEmpty ? "" : $"  over {string.Join(", ", rule.Over)}"));
        return text.ToString();
    }

    public static string Of(Study study)
    {
        var text = new StringBuilder();
        foreach (var use in study.Protocols)
            text.AppendLine($"protocol {use.Side}: {string.Join(", ", use.Protocol.Required.Select(r => r.Structure))}");
        text.AppendLine($"study {Of(study.Facts)}");
        foreach (var subject in study.Subjects) text.AppendLine($"  {Of(subject)}");
        if (study.Earlier is not { } earlier) return text.ToString();
        text.AppendLine($"earlier {Of(study.EarlierFacts)}");
        foreach (var subject in earlier) text.AppendLine($"  {Of(subject)}");
        return text.ToString();
    }

    private static string Of(Conclusion conclusion) => conclusion switch
    {
        TopicConclusion c => $"{c.Topic} {c.Value.Name}",
        HoldConclusion c => $"hold {c.Topic}",
        NextStepConclusion c => c.Step.Name,
        CautionConclusion c => c.Caution.Name,
        EvaluateConclusion c => $"evaluate {c.Step.Structure}",
        _ => conclusion.ToString(),
    };

    private static string Of(FindingType type) => type switch
    {
        ChoiceType { Normal: { } normal } => $"(normal {normal})",
        SignType { NormallyPresent: { } normal } => $"(normal {(normal ? "present" : "absent")})",
        MeasureType m => $"({m.Unit}{(m.Normal is null ? "" : $", normal {Of(m.Normal.Value)}")}, precision {m.Precision})",
        ExtentType e => $"({e.Axis.Name}{(e.NormallyNone ? ", normal none" : "")})",
        _ => "",
    };

    private static string Of(Model.Quantities.Interval i) => $"{(i.LowClosed ? "[" : "(")}{i.Low}..{i.High}{(i.HighClosed ? "]" : ")")}";

    private static string Of(StudySubject s) =>
        $"{s.Side} {s.Structure}{(s.IsNormal ? " normal" : "")}{(s.IsNotAssessable ? " not-assessable" : "")} {Of(s.Findings)}"
        + string.Concat(s.Lesions.Select(l => $" {l.Id} {Of(l.Findings)}"));

    private static string Of(Findings findings) =>
        $"{{{string.Join(", ", findings.ByName.Select(f => $"{f.Key} {Of(f.Value.Value)}"))}}}";

    private static string Of(FindingValue value) => value is MeasuredValue measured ? Of(measured.Interval) : value.ToString()!;
}
