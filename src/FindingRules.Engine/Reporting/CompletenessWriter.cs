using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>What the study's protocols require and the study does not have.</summary>
internal static class CompletenessWriter
{
    public static ImmutableArray<NotAssessed> Write(Examination examination, Study study) =>
    [
        .. from use in study.Protocols.OrderBy(u => u.Protocol.Name, StringComparer.Ordinal).ThenBy(u => u.Side)
           from gap in Gaps(examination, use)
           select gap,
    ];

    private static IEnumerable<NotAssessed> Gaps(Examination examination, ProtocolUse use) =>
        use.Protocol.Required.SelectMany(item => Gaps(examination, use, item)).Concat(Gaps(examination, use, 0, use.Protocol.Facts));

    private static IEnumerable<NotAssessed> Gaps(Examination examination, ProtocolUse use, ProtocolItem item) =>
        Gaps(examination, use, examination.SiteOf(item.Structure, item.Structure.IsPaired ? use.Side : Side.None), item.Findings);

    private static IEnumerable<NotAssessed> Gaps(
        Examination examination, ProtocolUse use, int site, ImmutableArray<Finding> findings)
    {
        var open = findings.Where(f => !Values(examination, site, f).Any(v => v is not (null or NotAssessableValue))).ToList();
        var notAssessable = open.Where(f => Values(examination, site, f).Any(v => v is NotAssessableValue)).ToList();
        var key = examination[site].Subject.Key;
        if (open.Except(notAssessable).ToList() is { Count: > 0 } missing)
            yield return new NotAssessed(use.Protocol.Name, key, [.. missing.Select(f => f.Name)], IsNotAssessable: false);
        if (notAssessable.Count > 0)
            yield return new NotAssessed(use.Protocol.Name, key, [.. notAssessable.Select(f => f.Name)], IsNotAssessable: true);
    }

    private static IEnumerable<FindingValue?> Values(Examination examination, int whole, Finding finding) =>
        Enumerable.Range(whole, examination[whole].LesionCount + 1)
            .Select(i => examination.ValueAt(i, examination.Network.Slots[finding]));

    /// <summary>Whether the study has everything that this use of a protocol requires.</summary>
    public static bool IsComplete(Examination examination, ProtocolUse use) => !Gaps(examination, use).Any();
}
