using FindingRules.Engine.Compiling;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Normalising;

/// <summary>
/// <c>normal: true</c> stands for each finding's declared normal value, unless something sent of the same subject
/// departs from normal: then nothing is filled in. What could not be assessed is filled in as that.
/// </summary>
internal static class NormalFilling
{
    /// <summary>Fills <paramref name="values"/>; the result marks what was filled as normal, or is null where nothing was.</summary>
    public static bool[]? Fill(RuleNetwork network, StudySubject sent, FindingValue?[] values)
    {
        if (sent.IsNotAssessable)
        {
            for (var i = 0; i < values.Length; i++) values[i] ??= NotAssessable;
            return null;
        }
        if (!sent.IsNormal || Departure(sent) is not null) return null;
        var filled = new bool[values.Length];
        foreach (var finding in sent.Structure.Kind.Findings.Values)
        {
            var slot = network.Slots[finding];
            if (values[slot] is not null || NormalOf(finding.Type) is not { } normal) continue;
            values[slot] = normal;
            filled[slot] = true;
        }
        return filled;
    }

    /// <summary>What speaks against filling in: the name of a finding that departs from normal, or of a lesion.</summary>
    public static string? Departure(StudySubject sent) => sent.Lesions.Length > 0
        ? $"lesion {sent.Lesions[0].Id}"
        : Departing(sent.Findings).FirstOrDefault()?.Finding.Title;

    /// <summary>What was sent and is not the normal that its finding declares.</summary>
    public static IEnumerable<SentFinding> Departing(Findings findings) =>
        findings.ByName.Values.Where(f => Departs(f.Finding.Type, f.Value));

    public static FindingValue? NormalOf(FindingType type) => type switch
    {
        ChoiceType { Normal: { } normal } => new ChoiceValue(normal),
        SignType { NormallyPresent: { } isPresent } => new SignValue(isPresent),
        ExtentType { NormallyNone: true } extent => new ExtentValue(extent.Axis, []),
        MeasureType { Normal: { } range } measure =>
            new MeasuredValue(range, measure.Unit, IsBound: true, "normal") { IsFromNormal = true },
        _ => null,
    };

    private static NotAssessableValue NotAssessable { get; } = new();

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
