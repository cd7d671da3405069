using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Normalising;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>
/// The calm line of each protocol of which everything was assessed, where on its side nothing was said, nothing true waits for
/// something unknown and nothing sent, now or of the earlier study, departs from normal. What a caution names, what is near a
/// limit, a probability and a fact of the study that departs from normal are excepted in the line itself.
/// </summary>
internal static class CalmWriter
{
    public static string? Write(Decided decided, Study study, Reading reading)
    {
        if (study.Protocols.IsEmpty) return null;
        var disturbed = Disturbed(decided, study, reading);
        var calm = new List<ProtocolUse>();
        foreach (var use in study.Protocols)
            if (disturbed.IsQuiet(use.Side) && CompletenessWriter.IsComplete(decided.Examination, use))
                calm.Add(use);
        if (calm.Count == 0) return null;
        var excepted = Excepted(decided, study, reading);
        var isWhole = disturbed.IsNone && calm.Count == study.Protocols.Length;
        return string.Join(" ", calm.Select(Line).Distinct());

        string Line(ProtocolUse use)
        {
            var except = excepted.IsQuiet(use.Side) ? "" : "Apart from what is named below: ";
            return $"{(isWhole ? "" : $"{Named(use)}: ")}{except}{decided.Filler.Fill(use.Protocol.Calm, 0)}";
        }
    }

    private static Sides Disturbed(Decided decided, Study study, Reading reading)
    {
        var sides = default(Sides);
        foreach (var suggestion in reading.Suggestions) sides = sides.With(SideOf(decided, suggestion.Subject));
        foreach (var held in reading.Held) sides = sides.With(SideOf(decided, held.Subject));
        foreach (var conflict in reading.Conflicts) sides = sides.With(SideOf(decided, conflict.Subject));
        foreach (var step in reading.NextSteps)
            if (!step.IsDone)
                foreach (var subject in step.Subjects)
                    sides = sides.With(SideOf(decided, subject));
        foreach (var rule in decided.Live)
            if (rule.State.Standing == Standing.Open || (rule.State.Standing == Standing.Stands && !rule.IsPublished))
                sides = sides.With(rule.Instance.Side);
        // What was abnormal earlier and is not spoken of now may have been treated or missed: the line would settle which.
        foreach (var subject in study.Subjects)
            if (NormalFilling.IsDescribed(subject) && !IsAnswered(decided, subject, reading))
                sides = sides.With(subject.Side);
        foreach (var subject in study.Earlier ?? [])
            if (NormalFilling.IsDescribed(subject))
                sides = sides.With(subject.Side);
        return sides;
    }

    private static Sides Excepted(Decided decided, Study study, Reading reading)
    {
        var sides = default(Sides);
        foreach (var (subject, _) in new BorderlineText(decided, reading).Near())
            sides = sides.With(decided.Find(subject)?.Side ?? Side.Unknown);
        foreach (var subject in study.Subjects)
            if (NormalFilling.IsDescribed(subject))
                sides = sides.With(subject.Side);
        // They are of no structure, so they do not speak against the line, but it must not seem to speak of them.
        foreach (var probability in reading.Probabilities) sides = sides.With(SideOf(decided, probability.Subject));
        foreach (var fact in study.Facts.InOrder)
            if (NormalFilling.IsDescribing(fact))
                sides = sides.With(Side.None);
        return sides;
    }

    /// <summary>Each thing in it that departs from normal is named by a caution.</summary>
    private static bool IsAnswered(Decided decided, StudySubject sent, Reading reading)
    {
        if (!sent.Lesions.IsEmpty) return false;
        var key = new Subject(sent.Structure, sent.Side, null).Key;
        foreach (var finding in sent.Findings.InOrder)
            if (NormalFilling.IsDescribing(finding) && !IsNamed(decided, reading, key, finding.Finding.Name))
                return false;
        return true;
    }

    private static bool IsNamed(Decided decided, Reading reading, string subject, string finding)
    {
        foreach (var caution in reading.Cautions)
            foreach (var evidence in caution.RestsOn)
                if (evidence.Subject == subject && evidence.Finding == finding
                    && Naming.Names(decided.Examination.Network.Pack, caution, evidence))
                    return true;
        return false;
    }

    private static Side SideOf(Decided decided, string subject)
    {
        foreach (var index in decided.Instances)
            if (decided.Examination[index].Subject.Key == subject)
                return decided.Examination[index].Side;
        throw new System.Diagnostics.UnreachableException();
    }

    private static string Named(ProtocolUse use) => use.Side is Side.Left or Side.Right
        ? $"{use.Side} side, {use.Protocol.Title}"
        : use.Protocol.Title;

    /// <summary>A bit for each side.</summary>
    private readonly record struct Sides(int Bits)
    {
        private const int LeftOrRight = (1 << (int)Side.Left) | (1 << (int)Side.Right);

        public bool IsNone => Bits == 0;

        public Sides With(Side side) => new(Bits | (1 << (int)side));

        /// <summary>What has no side, or one that is not known, disturbs both.</summary>
        public bool IsQuiet(Side side) =>
            IsNone || (side is Side.Left or Side.Right && (Bits & (1 << (int)side)) == 0 && (Bits & ~LeftOrRight) == 0);
    }
}
