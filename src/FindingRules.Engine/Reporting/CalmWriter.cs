using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Normalising;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>
/// The calm line of each protocol of which everything was assessed, where on its side nothing was said, nothing true waits for
/// something unknown and nothing sent, now or of the earlier study, departs from normal.
/// </summary>
internal static class CalmWriter
{
    public static string? Write(Decided decided, Study study, Reading reading)
    {
        var disturbed = Disturbed(decided, study, reading);
        var calm = study.Protocols.Where(u => IsQuiet(u.Side, disturbed) && CompletenessWriter.IsComplete(decided.Examination, u)).ToList();
        if (calm.Count == 0) return null;
        var filler = new WordingFiller(decided.Examination);
        return disturbed.Count == 0 && calm.Count == study.Protocols.Length
            ? string.Join(" ", calm.Select(u => filler.Fill(u.Protocol.Calm, 0)).Distinct())
            : string.Join(" ", calm.Select(u => $"{Named(u)}: {filler.Fill(u.Protocol.Calm, 0)}"));
    }

    /// <summary>What has no side, or one that is not known, disturbs both.</summary>
    private static bool IsQuiet(Side side, HashSet<Side> disturbed) =>
        disturbed.Count == 0
        || (side is Side.Left or Side.Right && !disturbed.Contains(side) && disturbed.All(s => s is Side.Left or Side.Right));

    private static HashSet<Side> Disturbed(Decided decided, Study study, Reading reading)
    {
        var sides = decided.Instances.ToDictionary(
            i => decided.Examination[i].Subject.Key, i => decided.Examination[i].Subject.Side, StringComparer.Ordinal);
        var said = reading.Suggestions.Select(s => s.Subject)
            .Concat(reading.Held.Select(h => h.Subject))
            .Concat(reading.Conflicts.Select(c => c.Subject))
            .Concat(reading.NextSteps.Where(s => !s.IsDone).SelectMany(s => s.Subjects))
            .Select(key => sides[key]);
        var waiting = decided.Rules
            .Where(r => r.State.Standing == Standing.Open || (r.State.Standing == Standing.Stands && !r.IsPublished))
            .Select(r => r.Instance.Subject.Side);
        // What was abnormal earlier and is not spoken of now may have been treated or missed: the line would settle which.
        var departing = study.Subjects.Concat(study.Earlier ?? []).Where(NormalFilling.IsDescribed).Select(s => s.Side);
        return [.. said, .. waiting, .. departing];
    }

    private static string Named(ProtocolUse use) => use.Side is Side.Left or Side.Right
        ? $"{use.Side} side, {use.Protocol.Title}"
        : use.Protocol.Title;
}
