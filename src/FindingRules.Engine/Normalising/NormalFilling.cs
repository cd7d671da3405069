using FindingRules.Engine.Evaluating;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Normalising;

/// <summary>
/// <c>normal: true</c> stands for each finding's declared normal value, unless something sent of the same subject
/// departs from normal: then nothing is filled in. What could not be assessed is filled in as that.
/// </summary>
internal static class NormalFilling
{
    public static void Fill(StudySubject sent, Instance instance)
    {
        if (sent.IsNotAssessable)
        {
            instance.IsLocated = false;
            foreach (var finding in instance.Plan.Findings) instance.Values[finding.Slot] ??= NotAssessable;
            return;
        }
        if (!sent.IsNormal || sent.Lesions.Length > 0 || DepartingFinding(sent) is not null) return;
        var filled = instance.MarkFilled();
        instance.IsLocated = false;
        foreach (var finding in instance.Plan.Findings)
        {
            if (finding.Normal is null || instance.Values[finding.Slot] is not null) continue;
            instance.Values[finding.Slot] = finding.Normal;
            filled[finding.Slot] = true;
        }
    }

    /// <summary>What speaks against filling in: the name of a finding that departs from normal, or of a lesion.</summary>
    public static string? Departure(StudySubject sent) =>
        sent.Lesions.Length > 0 ? $"lesion {sent.Lesions[0].Id}" : DepartingFinding(sent)?.Title;

    /// <summary>What was sent and is not the normal that its finding declares.</summary>
    public static IEnumerable<SentFinding> Departing(Findings findings) =>
        findings.InOrder.Where(f => Departs(f.Finding.Type, f.Value));

    /// <summary>It departs, or only a change has it; the latter does not keep the rest from being filled in as normal.</summary>
    public static bool IsDescribing(SentFinding sent) =>
        Departs(sent.Finding.Type, sent.Value) || (sent.Finding.IsAbsentWhenNormal && IsSome(sent.Value));

    public static bool IsDescribed(StudySubject sent)
    {
        if (sent.Lesions.Length > 0) return true;
        foreach (var finding in sent.Findings.InOrder)
            if (IsDescribing(finding))
                return true;
        return false;
    }

    public static FindingValue? NormalOf(FindingType type) => type switch
    {
        ChoiceType { Normal: { } normal } => new ChoiceValue(normal),
        SignType { NormallyPresent: { } isPresent } => new SignValue(isPresent),
        ExtentType { NormallyNone: true } extent => new ExtentValue(extent.Axis, []),
        MeasureType { Normal: { } range } measure =>
            new MeasuredValue(range, measure.Unit, IsBound: true, "normal") { IsFromNormal = true },
        _ => null,
    };

    private static bool IsSome(FindingValue value) => value switch
    {
        NotAssessableValue => false,
        MeasuredValue measured => measured.Interval.High is not { IsZero: true },
        _ => true,
    };

    private static NotAssessableValue NotAssessable { get; } = new();

    private static Finding? DepartingFinding(StudySubject sent)
    {
        foreach (var finding in sent.Findings.InOrder)
            if (Departs(finding.Finding.Type, finding.Value))
                return finding.Finding;
        return null;
    }

    private static bool Departs(FindingType type, FindingValue value) => (type, value) switch
    {
        (ChoiceType { Normal: { } normal }, ChoiceValue choice) => choice.Value != normal,
        (SignType { NormallyPresent: { } isPresent }, SignValue sign) => sign.IsPresent != isPresent,
        (ExtentType { NormallyNone: true }, ExtentValue extent) => !extent.Stretches.IsEmpty,
        // A bound that only may lie outside departs as well: were it filled in, the exact value could take it back.
        // The range ends before the limit of the rules; a measurement that its error may have carried out of it is no departure.
        (MeasureType { Normal: { } range } measure, MeasuredValue measured) => !range.Widen(measure.Precision).Contains(measured.Interval),
        _ => false,
    };
}
