using System.Collections.Immutable;
using FindingRules.Engine.Normalising;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>How the study was taken, where that is not what its sender may have expected.</summary>
internal static class NoteWriter
{
    public static ImmutableArray<string> Write(Study study) =>
    [
        .. study.Subjects.OrderBy(s => s.Structure.Name, StringComparer.Ordinal).ThenBy(s => s.Side).SelectMany(Notes),
    ];

    private static IEnumerable<string> Notes(StudySubject sent)
    {
        var title = new Subject(sent.Structure, sent.Side, null).Title;
        if (sent.IsNormal && NormalFilling.Departure(sent) is { } departure)
            yield return $"The {title} was sent as normal, but {departure} speaks against it: no normal finding was filled in.";
        if (sent.IsNotAssessable && sent.Findings.ByName.Count > 0)
            yield return $"The {title} was sent as not assessable and with findings: the findings were used. Check which holds.";
        if (sent.Side == Side.Unknown)
            yield return $"The side of the {sent.Structure.Title} was not sent: what depends on a side stays unknown.";
    }
}
