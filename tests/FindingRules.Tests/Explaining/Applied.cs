using System.Collections.Immutable;
using FindingRules.Model.Explanations;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;
using FindingRules.Testing.Generators;

namespace FindingRules.Tests.Explaining;

/// <summary>A study changed as a way says, from nothing but the words of its changes.</summary>
internal static class Applied
{
    private const string Earlier = "earlier ";

    public static Study To(Study study, Vocabulary vocabulary, IEnumerable<Change> changes) =>
        changes.Aggregate(study, (s, c) => To(s, vocabulary, c));

    /// <summary>One finding given a value, or taken away with null.</summary>
    public static Study To(Study study, Subject at, bool isEarlier, Finding finding, FindingValue? value)
    {
        if (at.Structure is null)
            return isEarlier
                ? study with { Earlier = study.Earlier ?? [], EarlierFacts = With(study.EarlierFacts, finding, value) }
                : study with { Facts = With(study.Facts, finding, value) };
        var subjects = isEarlier ? study.Earlier ?? [] : study.Subjects;
        var sent = subjects.FirstOrDefault(s => s.Structure == at.Structure && s.Side == at.Side)
            ?? new StudySubject(at.Structure, at.Side, false, false, Findings.None, [], ModelOf.Nowhere);
        var changed = at.Lesion is null
            ? sent with { Findings = With(sent.Findings, finding, value) }
            : sent with { Lesions = [.. sent.Lesions.Select(l => l.Id == at.Lesion ? l with { Findings = With(l.Findings, finding, value) } : l)] };
        subjects = subjects.Remove(sent).Add(changed);
        return isEarlier ? study with { Earlier = subjects } : study with { Subjects = subjects };
    }

    private static Study To(Study study, Vocabulary vocabulary, Change change)
    {
        var isEarlier = change.Subject.StartsWith(Earlier, StringComparison.Ordinal);
        var at = SubjectOf(isEarlier ? change.Subject[Earlier.Length..] : change.Subject, vocabulary);
        var finding = (at.Structure?.Kind.Findings ?? vocabulary.StudyFacts)[change.Finding];
        return To(study, at, isEarlier, finding, Value(change.To, finding.Type));
    }

    private static Subject SubjectOf(string key, Vocabulary vocabulary)
    {
        if (key == "study") return Subject.Study;
        var (whole, lesion) = key.Split(" lesion ") is [var first, var id] ? (first, id) : (key, null);
        return vocabulary.Structures.Values
            .SelectMany(s => Enum.GetValues<Side>().Select(side => new Subject(s, side, null)))
            .Single(s => s.Key == whole && s.Structure!.IsPaired != (s.Side == Side.None)) with
        { Lesion = lesion };
    }

    private static FindingValue? Value(string text, FindingType type) => (text, type) switch
    {
        ("not sent", _) => null,
        ("not-assessable", _) => new NotAssessableValue(),
        (_, ChoiceType choice) => new ChoiceValue(choice.Values.Single(v => v == text)),
        (_, SignType) => new SignValue(text switch { "present" => true, "absent" => false, _ => throw new FormatException(text) }),
        (_, MeasureType measure) => Measured(QuantityText.Read(text), measure),
        (_, ExtentType extent) => new ExtentValue(extent.Axis, text == "none" ? [] : [.. text.Split(" and ").Select(s => Stretch(s, extent.Axis))]),
        _ => throw new FormatException(text),
    };

    private static MeasuredValue Measured(QuantityReading read, MeasureType type) => read is { Problem: QuantityProblem.None, Interval.IsPoint: true }
        ? new MeasuredValue(read.Interval, type.Unit, IsBound: false, read.Shown)
        : throw new FormatException($"{read.Problem}");

    private static Stretch Stretch(string text, Axis axis)
    {
        var ends = text.Split(" to ").Select(axis.IndexOf).ToArray();
        return new Stretch(ends[0], ends[^1]);
    }

    private static Findings With(Findings findings, Finding finding, FindingValue? value) => new(value is null
        ? findings.ByName.Remove(finding.Name)
        : findings.ByName.SetItem(finding.Name, new SentFinding(finding, value, ModelOf.Nowhere)));
}
