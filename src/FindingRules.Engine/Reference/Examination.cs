using System.Collections.Immutable;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reference;

/// <summary>The findings of one study, this one or the earlier one.</summary>
internal sealed class Examination(ImmutableArray<StudySubject> subjects, Findings facts)
{
    public ImmutableArray<Lesion> LesionsOf(Subject structure) => Sent(structure)?.Lesions ?? [];

    /// <summary>What is known of a finding of one instance, or null.</summary>
    public FindingValue? Find(Subject at, Finding finding)
    {
        if (at.Structure is null) return Known(facts.Find(finding.Name));
        if (Sent(at) is not { } sent) return null;
        var lesion = sent.Lesions.FirstOrDefault(l => l.Id == at.Lesion);
        if ((lesion?.Findings.Find(finding.Name) ?? sent.Findings.Find(finding.Name)) is { } found) return Known(found);
        return IsFilled(sent) ? NormalOf(finding.Type) : null;
    }

    public bool IsNotAssessable(Subject at, Finding finding)
    {
        if (at.Structure is null) return facts.Find(finding.Name)?.Value is NotAssessableValue;
        if (Sent(at) is not { } sent) return false;
        var lesion = sent.Lesions.FirstOrDefault(l => l.Id == at.Lesion);
        return (lesion?.Findings.Find(finding.Name) ?? sent.Findings.Find(finding.Name)) is { } found
            ? found.Value is NotAssessableValue
            : sent.IsNotAssessable;
    }

    public bool IsAnythingKnown(Subject at) =>
        at.Structure is { } structure
            ? structure.Kind.Findings.Values.Any(f => Find(at, f) is not null)
            : facts.ByName.Values.Any(f => Known(f) is not null);

    private StudySubject? Sent(Subject at) => subjects.FirstOrDefault(s => s.Structure == at.Structure && s.Side == at.Side);

    private static FindingValue? Known(SentFinding? sent) => sent?.Value is NotAssessableValue ? null : sent?.Value;

    private static bool IsFilled(StudySubject sent) =>
        sent.IsNormal && !sent.IsNotAssessable && sent.Lesions.IsEmpty
        && !sent.Findings.ByName.Values.Any(f => DepartsFromNormal(f.Finding.Type, f.Value));

    private static bool DepartsFromNormal(FindingType type, FindingValue value) => (type, value) switch
    {
        (ChoiceType { Normal: { } normal }, ChoiceValue choice) => choice.Value != normal,
        (SignType { NormallyPresent: { } normal }, SignValue sign) => sign.IsPresent != normal,
        (ExtentType { NormallyNone: true }, ExtentValue extent) => !extent.Stretches.IsEmpty,
        // A bound that only may lie outside departs as well: nothing is filled in on a guess.
        (MeasureType { Normal: { } normal, Precision: var error }, MeasuredValue measured) =>
            !normal.Widen(error).Contains(measured.Interval),
        _ => false,
    };

    private static FindingValue? NormalOf(FindingType type) => type switch
    {
        ChoiceType { Normal: { } normal } => new ChoiceValue(normal),
        SignType { NormallyPresent: { } normal } => new SignValue(normal),
        ExtentType { NormallyNone: true, Axis: var axis } => new ExtentValue(axis, []),
        MeasureType { Normal: { } normal, Unit: var unit } =>
            new MeasuredValue(normal, unit, IsBound: true, "normal") { IsFromNormal = true },
        _ => null,
    };
}
