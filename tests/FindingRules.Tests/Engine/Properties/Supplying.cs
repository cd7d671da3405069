using System.Collections.Immutable;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;
using FindingRules.Testing.Generators;

namespace FindingRules.Tests.Engine.Properties;

/// <summary>The same study with more known of it.</summary>
internal static class Supplying
{
    /// <summary>One finding that was not sent, of the study, of a subject, of a lesion or of a structure not sent at all.</summary>
    public static Study OneFinding(Draw draw, Sample sample)
    {
        var study = sample.Study;
        var facts = sample.Pack.Vocabulary.StudyFacts.Values;
        var ways = Subjects(draw, study.Subjects).Select(s => study with { Subjects = s })
            .Concat(study.Earlier is { } earlier ? Subjects(draw, earlier).Select(s => study with { Earlier = s }) : [])
            .Concat(Missing(facts, study.Facts).Select(f => study with { Facts = With(draw, study.Facts, f) }))
            .Concat(Unsent(sample).Select(s => study with { Subjects = study.Subjects.Add(New(draw, s)) }))
            .ToList();
        return ways.Count == 0 ? study : draw.Of(ways);
    }

    /// <summary>Every bound replaced by one of the values that it allows, or by a narrower bound.</summary>
    public static Study NarrowerBounds(Draw draw, Study study) => study with
    {
        Subjects = [.. study.Subjects.Select(s => Narrower(draw, s))],
        Earlier = study.Earlier is { } earlier ? [.. earlier.Select(s => Narrower(draw, s))] : null,
    };

    private static IEnumerable<ImmutableArray<StudySubject>> Subjects(Draw draw, ImmutableArray<StudySubject> subjects) =>
        from subject in subjects
        where !subject.IsNotAssessable
        let isFilled = subject.IsNormal
        let missing = Missing(subject.Structure.Kind.Findings.Values, subject.Findings).Where(f => !isFilled || !HasNormal(f.Type)).ToList()
        from changed in missing.Select(f => subject with { Findings = With(draw, subject.Findings, f) }).Concat(
            from lesion in subject.Lesions
            from finding in Missing(missing, lesion.Findings)
            select subject with
            {
                Lesions = subject.Lesions.Replace(lesion, lesion with { Findings = With(draw, lesion.Findings, finding) }),
            })
        select subjects.Replace(subject, changed);

    private static bool HasNormal(FindingType type) => type is
        ChoiceType { Normal: not null } or SignType { NormallyPresent: not null } or ExtentType { NormallyNone: true } or MeasureType { Normal: not null };

    private static IEnumerable<Finding> Missing(IEnumerable<Finding> findings, Findings sent) => findings.Where(f => sent.Find(f.Name) is null);

    private static Findings With(Draw draw, Findings findings, Finding finding) => new(findings.ByName.Add(
        finding.Name, new SentFinding(finding, StudyDrawing.Value(draw, finding.Type), ModelOf.Nowhere)));

    private static IEnumerable<Subject> Unsent(Sample sample) => sample.Pack.Vocabulary.Structures.Values
        .SelectMany(s => s.IsPaired ? [new Subject(s, Side.Left, null), new Subject(s, Side.Right, null)] : new[] { new Subject(s, Side.None, null) })
        .Where(at => !sample.Study.Subjects.Any(s => s.Structure == at.Structure && s.Side == at.Side));

    private static StudySubject New(Draw draw, Subject at) => new(
        at.Structure!, at.Side, IsNormal: draw.Chance(20), IsNotAssessable: false,
        With(draw, Findings.None, draw.Of(at.Structure!.Kind.Findings.Values.ToList())), [], ModelOf.Nowhere);

    private static StudySubject Narrower(Draw draw, StudySubject subject) => subject with
    {
        Findings = Narrower(draw, subject.Findings),
        Lesions = [.. subject.Lesions.Select(l => l with { Findings = Narrower(draw, l.Findings) })],
    };

    private static Findings Narrower(Draw draw, Findings findings) => new(findings.ByName.ToImmutableSortedDictionary(
        f => f.Key, f => f.Value with { Value = Narrower(draw, f.Value.Value) }, StringComparer.Ordinal));

    private static FindingValue Narrower(Draw draw, FindingValue value)
    {
        if (value is not MeasuredValue { IsBound: true, Interval: { Low: { } low, High: { } high } } bound) return value;
        var middle = (low + high) / 2;
        var (below, above) = ((low + middle) / 2, (middle + high) / 2);
        return bound with { Interval = draw.Chance(50) ? Interval.Point(draw.Of(below, middle, above)) : Interval.Closed(below, middle) };
    }
}
