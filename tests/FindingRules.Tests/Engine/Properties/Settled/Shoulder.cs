using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;
using FindingRules.Testing.Generators;
using static FindingRules.Testing.Generators.ModelOf;

namespace FindingRules.Tests.Engine.Properties.Settled;

/// <summary>A small shoulder: what the hand-written rules of these tests speak of, and studies of it.</summary>
internal static class Shoulder
{
    private static readonly Axis _surface = Axis("surface", "bursal", "intrasubstance", "articular");

    private static readonly Kind _tendon = Kind("tendon", null,
        Choice("echo", "fibrillar", "fibrillar", "hypoechoic", "anechoic"),
        Choice("reangled", null, "persists", "resolves"),
        Sign("shadowing", normallyPresent: false),
        Length("thickness", new Rational(1, 2), Interval.Closed(2, 8)),
        Length("gap", 0, null));

    private static readonly Kind _cuff = Kind("cuff-tendon", _tendon,
        Extent("fluid", _surface, normallyNone: true), Length("tear-length", 1, null));

    private static readonly Structure[] _structures =
    [
        ModelOf.Structure("supraspinatus", _cuff, isPaired: true), ModelOf.Structure("infraspinatus", _cuff, isPaired: true),
        ModelOf.Structure("biceps", _tendon, isPaired: true), ModelOf.Structure("midline-band", _tendon, isPaired: false),
    ];

    public static Vocabulary Vocabulary { get; } = Vocabulary(
        [_surface], [_tendon, _cuff], _structures,
        [Choice("modality", null, "ultrasound", "radiograph"), Choice("suspected", null, "wood", "glass", "metal"), Sign("trauma"),
         Measure("age", Unit.Year, Interval.Closed(0, 1440), isWhole: true)]);

    public static Scope Tendon { get; } = Each(Vocabulary, _tendon);

    public static Scope Cuff { get; } = Each(Vocabulary, _cuff);

    public static Topic Depth { get; } = ModelOf.Topic("depth", Cuff, isPerStructure: false, "full", "bursal", "articular");

    public static Topic State { get; } = ModelOf.Topic("state", Tendon, isPerStructure: true, "thick", "regular");

    public static Topic Count { get; } = ModelOf.Topic("count", Scope.Study, isPerStructure: false, "several", "one");

    public static Structure Structure(string name) => Vocabulary.Structures[name];

    public static Scope Only(string structure) => Each(Structure(structure));

    public static Finding Finding(string name) => _cuff.Findings.GetValueOrDefault(name) ?? Vocabulary.StudyFacts[name];

    public static Outcome Decide(ImmutableArray<Rule> rules, Study study, params ImmutableArray<string> withdrawn) =>
        BothInterpreters.Decide(Pack(rules, withdrawn), study);

    /// <summary>The truth of one rule's condition; the rule gives no topic.</summary>
    public static Truth Truth(this Outcome outcome, string rule, string subject) => outcome.Rule(rule, subject).Truth;

    public static Truth Truth(this Outcome outcome, string rule, string structure, Side side) =>
        outcome.Truth(rule, new Subject(Structure(structure), side, null).Key);

    public static RuleOutcome Rule(this Outcome outcome, string rule, string subject) =>
        outcome.Rules.Single(r => r.Rule.Id == rule && r.Subject.Key == subject);

    public static Standing Standing(this Outcome outcome, string rule, string subject) => outcome.Rule(rule, subject).Standing;

    public static (TopicStatus Status, string? Value) Topic(this Outcome outcome, Topic topic, string subject)
    {
        var found = outcome.Topics.Single(t => t.Topic == topic && t.Subject.Key == subject);
        return (found.Status, found.Value);
    }

    public static Study Study(params ImmutableArray<StudySubject> subjects) => new() { Key = "S-1", Subjects = subjects, Location = Nowhere };

    public static Study WithFacts(this Study study, params (string, object)[] facts) => study with { Facts = Sent(facts) };

    public static Study WithEarlier(this Study study, params ImmutableArray<StudySubject> subjects) => study with { Earlier = subjects };

    public static Study UnderProtocol(this Study study, Side side, params string[] required) => study with
    {
        Protocols =
        [
            new ProtocolUse(
                new Protocol("shoulder", "shoulder", [.. required.Select(r => new ProtocolItem(Structure(r), [], Nowhere))], [], Says("calm"), [], Nowhere),
                side, Nowhere),
        ],
    };

    public static StudySubject Right(string structure, params (string, object)[] findings) => Subject(structure, Side.Right, findings);

    public static StudySubject Left(string structure, params (string, object)[] findings) => Subject(structure, Side.Left, findings);

    public static StudySubject Subject(string structure, Side side, params (string, object)[] findings) =>
        new(Structure(structure), side, false, false, Sent(findings), [], Nowhere);

    public static StudySubject Lesion(this StudySubject subject, string id, params (string, object)[] findings) =>
        subject with { Lesions = subject.Lesions.Add(new Lesion(id, Sent(findings), Nowhere)) };

    public static StudySubject Normal(this StudySubject subject) => subject with { IsNormal = true };

    public static StudySubject NotAssessable(this StudySubject subject) => subject with { IsNotAssessable = true };

    public static Interval Below(int limit) => new(Rational.Zero, true, limit, false);

    private static Pack Pack(ImmutableArray<Rule> rules, ImmutableArray<string> withdrawn) => ModelOf.Pack(
        new Symbols { Vocabulary = Vocabulary, Topics = ByName([Depth, State, Count], t => t.Name) }, rules) with
    {
        Withdrawn = [.. withdrawn.Select(id => new Withdrawal(id, new DateOnly(2026, 1, 31), "Withdrawn in a test."))],
    };

    private static Finding Length(string name, Rational precision, Interval? normal) =>
        Measure(name, Unit.Millimetre, Interval.Closed(0, 80), precision, normal);

    private static Findings Sent((string Name, object Value)[] findings) => new(ByName(
        findings.Select(f => new SentFinding(Finding(f.Name), Value(Finding(f.Name), f.Value), Nowhere)), f => f.Finding.Name));

    private static FindingValue Value(Finding finding, object value) => value switch
    {
        FindingValue made => made,
        string word => new ChoiceValue(word),
        bool isPresent => new SignValue(isPresent),
        int number => Measured(finding, Interval.Point(new Quantity(number, ((MeasureType)finding.Type).Unit).InBase)),
        Rational number => Measured(finding, Interval.Point(number)),
        Interval bound => Measured(finding, bound),
        (int, int)[] stretches => new ExtentValue(_surface, [.. stretches.Select(s => new Stretch(s.Item1, s.Item2))]),
        _ => throw new ArgumentException($"No value for {finding} is made of {value}.", nameof(value)),
    };

    private static MeasuredValue Measured(Finding finding, Interval interval) =>
        new(interval, ((MeasureType)finding.Type).Unit, !interval.IsPoint, "shown");
}
