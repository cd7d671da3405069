using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Normalising;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>
/// The calm line of each protocol of which everything was assessed, where on its side nothing was said, nothing true waits for
/// something unknown and nothing sent, now or of the earlier study, departs from normal. What a caution answers, and what is near
/// a limit, is excepted in the line itself.
/// </summary>
internal static class CalmWriter
{
    public static string? Write(Decided decided, Study study, Reading reading)
    {
        var disturbed = Disturbed(decided, study, reading);
        var calm = study.Protocols.Where(u => IsQuiet(u.Side, disturbed) && CompletenessWriter.IsComplete(decided.Examination, u)).ToList();
        if (calm.Count == 0) return null;
        var filler = new WordingFiller(decided.Examination);
        var excepted = Excepted(decided, study, reading);
        var isWhole = disturbed.Count == 0 && calm.Count == study.Protocols.Length;
        return string.Join(" ", calm.Select(Line).Distinct());

        string Line(ProtocolUse use)
        {
            var except = IsQuiet(use.Side, excepted) ? "" : "Apart from what is named below: ";
            return $"{(isWhole ? "" : $"{Named(use)}: ")}{except}{filler.Fill(use.Protocol.Calm, 0)}";
        }
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
        var departing = study.Subjects.Where(s => NormalFilling.IsDescribed(s) && !IsAnswered(s, reading))
            .Concat((study.Earlier ?? []).Where(NormalFilling.IsDescribed)).Select(s => s.Side);
        return [.. said, .. waiting, .. departing];
    }

    private static HashSet<Side> Excepted(Decided decided, Study study, Reading reading) =>
    [
        .. new BorderlineText(decided, reading).Near().Select(n => decided.Find(n.Subject)?.Side ?? Side.Unknown),
        .. study.Subjects.Where(NormalFilling.IsDescribed).Select(s => s.Side),
    ];

    /// <summary>Each thing in it that departs from normal is spoken of by a caution.</summary>
    private static bool IsAnswered(StudySubject sent, Reading reading)
    {
        var key = new Subject(sent.Structure, sent.Side, null).Key;
        var answered = reading.Cautions.SelectMany(c => c.RestsOn).Where(e => e.Subject == key).Select(e => e.Finding)
            .ToHashSet(StringComparer.Ordinal);
        return sent.Lesions.IsEmpty && NormalFilling.Describing(sent.Findings).All(f => answered.Contains(f.Finding.Name));
    }

    private static string Named(ProtocolUse use) => use.Side is Side.Left or Side.Right
        ? $"{use.Side} side, {use.Protocol.Title}"
        : use.Protocol.Title;
}
