using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>What the study's protocols require and the study does not have.</summary>
internal static class CompletenessWriter
{
    public static ImmutableArray<NotAssessed> Write(Examination examination, Study study)
    {
        var gaps = ImmutableArray.CreateBuilder<NotAssessed>();
        foreach (var use in ReportOrder.Protocols(study)) AddGaps(gaps, examination, use);
        return gaps.DrainToImmutable();
    }

    /// <summary>Whether the study has everything that this use of a protocol requires.</summary>
    public static bool IsComplete(Examination examination, ProtocolUse use)
    {
        var gaps = ImmutableArray.CreateBuilder<NotAssessed>();
        AddGaps(gaps, examination, use);
        return gaps.Count == 0;
    }

    private static void AddGaps(ImmutableArray<NotAssessed>.Builder gaps, Examination examination, ProtocolUse use)
    {
        foreach (var item in use.Protocol.Required)
        {
            var site = examination.SiteOf(item.Structure, item.Structure.IsPaired ? use.Side : Side.None);
            AddGaps(gaps, examination, use, site, item.Findings);
        }
        AddGaps(gaps, examination, use, 0, use.Protocol.Facts);
    }

    private static void AddGaps(
        ImmutableArray<NotAssessed>.Builder gaps, Examination examination, ProtocolUse use, int site, ImmutableArray<Finding> findings)
    {
        List<string>? missing = null, notAssessable = null;
        foreach (var finding in findings)
        {
            var value = BestKnown(examination, site, finding);
            if (value is null) (missing ??= []).Add(finding.Name);
            else if (value is NotAssessableValue) (notAssessable ??= []).Add(finding.Name);
        }
        var key = examination[site].Subject.Key;
        if (missing is not null) gaps.Add(new NotAssessed(use.Protocol.Name, key, [.. missing], IsNotAssessable: false));
        if (notAssessable is not null) gaps.Add(new NotAssessed(use.Protocol.Name, key, [.. notAssessable], IsNotAssessable: true));
    }

    /// <summary>Of the structure and its lesions, a value before one that could not be judged, and that before none.</summary>
    private static FindingValue? BestKnown(Examination examination, int whole, Finding finding)
    {
        var slot = examination.Network.Slots[finding];
        FindingValue? best = null;
        for (var i = whole; i <= whole + examination[whole].LesionCount; i++)
        {
            if (examination.ValueAt(i, slot) is not { } value) continue;
            if (value is not NotAssessableValue) return value;
            best = value;
        }
        return best;
    }
}
