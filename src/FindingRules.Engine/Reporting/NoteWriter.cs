using System.Collections.Immutable;
using System.Text;
using FindingRules.Engine.Normalising;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>How the study was taken, where that is not what its sender may have expected, and what no rule answered.</summary>
internal static class NoteWriter
{
    public static ImmutableArray<string> Write(Decided decided, Study study, Reading reading)
    {
        var notes = ImmutableArray.CreateBuilder<string>();
        var said = new Said(decided.Examination.Network.Pack, reading);
        var subjects = InOrder(study.Subjects);
        AddNotFilled(notes, subjects);
        foreach (var subject in subjects)
        {
            if (subject.IsNotAssessable || subject.Lesions.Length > 0 || subject.Side == Side.Unknown) notes.AddRange(Notes(subject));
            if (reading.Held.IsEmpty || !AddWithheld(notes, subject, reading)) AddUnanswered(notes, subject, said);
        }
        AddUnanswered(notes, study.Facts, Subject.Study, [], said);
        foreach (var subject in InOrder(study.Earlier ?? [])) AddEarlier(notes, subject, study, said);
        return notes.DrainToImmutable();
    }

    private static ImmutableArray<StudySubject> InOrder(ImmutableArray<StudySubject> subjects) =>
        subjects.Sort(static (a, b) =>
            string.CompareOrdinal(a.Structure.Name, b.Structure.Name) is var byName && byName != 0 ? byName : a.Side - b.Side);

    /// <summary>One line for however many: it says the same of each.</summary>
    private static void AddNotFilled(ImmutableArray<string>.Builder notes, ImmutableArray<StudySubject> subjects)
    {
        var departing = new List<(string Title, string With)>();
        foreach (var sent in subjects)
            if (sent.IsNormal && NormalFilling.Departure(sent) is { } departure)
                departing.Add((new Subject(sent.Structure, sent.Side, null).Title, departure));
        if (departing is [var one])
            notes.Add($"The {one.Title} is described as normal and with {one.With}: the rest of it is not taken as normal.");
        else if (departing.Count > 1)
            notes.Add($"Described as normal and with a finding: {string.Join(", ", departing.Select(d => $"{d.Title} ({d.With})"))}. "
                + "The rest of each is not taken as normal.");
    }

    private static IEnumerable<string> Notes(StudySubject sent)
    {
        var subject = new Subject(sent.Structure, sent.Side, null);
        if (sent.IsNotAssessable && sent.Findings.ByName.Count > 0)
            yield return $"The {subject.Title} was sent as not assessable and with findings: the findings were used. Check which holds.";
        foreach (var (finding, lesion) in Opposed(sent))
            yield return $"The {subject.Title} was sent with {finding.Finding.Title} {finding.Value}, "
                + $"which its lesion {lesion} contradicts: check which holds.";
        if (sent.Side == Side.Unknown)
            yield return $"The side of the {sent.Structure.Title} was not sent: what depends on a side stays unknown.";
    }

    /// <summary>What is normal of the structure and not of a lesion in it.</summary>
    private static IEnumerable<(SentFinding Finding, string Lesion)> Opposed(StudySubject sent) =>
        from lesion in sent.Lesions
        from departing in NormalFilling.Departing(lesion.Findings)
        let whole = sent.Findings.Find(departing.Finding.Name)
        where whole is { Value: not NotAssessableValue } && !NormalFilling.Departing(sent.Findings).Contains(whole)
        select (whole, lesion.Id);

    /// <summary>
    /// What departs from normal must not vanish between the study and the report because no rule speaks of it. Where the
    /// subject is described, its pattern and sizes belong to what was described; a sign may still stand for itself.
    /// </summary>
    private static void AddUnanswered(ImmutableArray<string>.Builder notes, StudySubject sent, Said said)
    {
        var whole = new Subject(sent.Structure, sent.Side, null);
        AddUnanswered(notes, sent.Findings, whole, sent.Lesions, said);
        foreach (var lesion in sent.Lesions) AddUnanswered(notes, lesion.Findings, whole with { Lesion = lesion.Id }, [], said);
    }

    private static void AddUnanswered(
        ImmutableArray<string>.Builder notes, Findings findings, Subject subject, ImmutableArray<Lesion> lesions, Said said)
    {
        StringBuilder? left = null;
        foreach (var finding in findings.InOrder)
            if (NormalFilling.IsDescribing(finding) && !said.IsAnswered(subject, lesions, finding.Finding.Name)
                && (finding.Finding.Type is SignType || !said.IsDescribed(subject, lesions)))
                (left is null ? left = new StringBuilder() : left.Append(", ")).Append(Words(finding));
        if (left is not null) notes.Add($"Also recorded of the {subject.Title}: {left}; not interpreted.");
    }

    /// <summary>
    /// What was seen stays in the text while its name is withheld: what departs from normal, and what the hold rests on that has
    /// no normal. False where something was said of the subject, or nothing is withheld.
    /// </summary>
    private static bool AddWithheld(ImmutableArray<string>.Builder notes, StudySubject sent, Reading reading)
    {
        var whole = new Subject(sent.Structure, sent.Side, null);
        var holds = reading.Held.Where(h => Naming.IsOf(h.Subject, whole.Key)).ToList();
        var held = holds.SelectMany(h => h.RestsOn).Select(e => e.Finding).ToHashSet(StringComparer.Ordinal);
        if (holds.Count == 0 || reading.Suggestions.Any(s => Naming.IsOf(s.Subject, whole.Key))) return false;
        AddRecorded(sent.Findings, whole);
        foreach (var lesion in sent.Lesions) AddRecorded(lesion.Findings, whole with { Lesion = lesion.Id });
        return true;

        void AddRecorded(Findings findings, Subject subject)
        {
            var recorded = findings.InOrder
                .Where(f => NormalFilling.IsDescribing(f) || (held.Contains(f.Finding.Name) && HasNoNormal(f))).Select(Words).ToList();
            if (recorded.Count > 0)
                notes.Add($"Recorded of the {subject.Title}: {string.Join(", ", recorded)}; not interpreted while an answer is withheld.");
        }
    }

    private static bool HasNoNormal(SentFinding f) =>
        f.Value is not NotAssessableValue && !f.Finding.IsAbsentWhenNormal && NormalFilling.NormalOf(f.Finding.Type) is null;

    /// <summary>The structure itself, or a lesion in it.</summary>
    private static bool IsOf(string key, string whole) => key == whole || key.StartsWith($"{whole} ", StringComparison.Ordinal);

    /// <summary>An earlier change that is not the same now must not vanish because something else is said of the subject.</summary>
    private static void AddEarlier(ImmutableArray<string>.Builder notes, StudySubject sent, Study study, Said said)
    {
        var whole = new Subject(sent.Structure, sent.Side, null);
        var now = study.Subjects.FirstOrDefault(s => s.Structure == sent.Structure && s.Side == sent.Side);
        var left = new Once<string>();
        foreach (var (findings, lesion) in sent.Lesions.Select(l => (l.Findings, (string?)l.Id)).Prepend((sent.Findings, null)))
        {
            var key = $"earlier {new Subject(sent.Structure, sent.Side, lesion).Key}";
            foreach (var finding in findings.InOrder)
                if (NormalFilling.IsDescribing(finding) && !IsSame(finding, now, lesion)
                    && !said.IsAnswered(key, finding.Finding.Name) && !said.IsAnswered($"earlier {whole.Key}", finding.Finding.Name))
                    left.Add(Words(finding));
        }
        if (left.Count > 0)
            notes.Add($"In the earlier study of the {whole.Title}: {string.Join(", ", left.Sorted(string.CompareOrdinal))}; compare.");
    }

    private static bool IsSame(SentFinding earlier, StudySubject? now, string? lesion)
    {
        var own = now?.Lesions.FirstOrDefault(l => l.Id == lesion)?.Findings.Find(earlier.Finding.Name);
        return (own ?? now?.Findings.Find(earlier.Finding.Name))?.Value.ToString() == earlier.Value.ToString();
    }

    private static string Words(SentFinding finding) => $"{finding.Finding.Title} {finding.Value.ToString()!.Replace('-', ' ')}";

    /// <summary>Which subjects and findings the reading speaks of already.</summary>
    private sealed class Said
    {
        private readonly HashSet<(string Subject, string Finding)> _answered = [];
        private readonly HashSet<string> _described = new(StringComparer.Ordinal);

        public Said(Pack pack, Reading reading)
        {
            foreach (var suggestion in reading.Suggestions) Describe(suggestion.Subject, suggestion.RestsOn);
            foreach (var held in reading.Held) Describe(held.Subject, held.RestsOn);
            foreach (var conflict in reading.Conflicts)
                foreach (var value in conflict.Values)
                    Describe(conflict.Subject, value.RestsOn);
            foreach (var caution in reading.Cautions)
                foreach (var evidence in caution.RestsOn)
                    if (Naming.Names(pack, caution, evidence))
                        Answer(evidence);
            foreach (var step in reading.NextSteps) Answer(step.RestsOn);
            foreach (var probability in reading.Probabilities) Answer(probability.RestsOn);
        }

        public bool IsAnswered(string subject, string finding) => _answered.Contains((subject, finding));

        /// <summary>Of the subject, or of one of its lesions.</summary>
        public bool IsAnswered(Subject subject, ImmutableArray<Lesion> lesions, string finding)
        {
            if (IsAnswered(subject.Key, finding)) return true;
            foreach (var lesion in lesions)
                if (IsAnswered((subject with { Lesion = lesion.Id }).Key, finding))
                    return true;
            return false;
        }

        /// <summary>The subject, its structure or one of its lesions.</summary>
        public bool IsDescribed(Subject subject, ImmutableArray<Lesion> lesions)
        {
            if (_described.Contains(subject.Key) || _described.Contains(subject.Whole.Key)) return true;
            foreach (var lesion in lesions)
                if (_described.Contains((subject with { Lesion = lesion.Id }).Key))
                    return true;
            return false;
        }

        public bool IsDescribed(string whole) => _described.Any(key => Naming.IsOf(key, whole));

        private void Describe(string subject, ImmutableArray<Evidence> restsOn)
        {
            _described.Add(subject);
            Answer(restsOn);
        }

        private void Answer(ImmutableArray<Evidence> restsOn)
        {
            foreach (var evidence in restsOn) Answer(evidence);
        }

        private void Answer(Evidence evidence) => _answered.Add((evidence.Subject, evidence.Finding));
    }
}
