using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;
using FindingRules.Workload;
using static FindingRules.Testing.Generators.ModelOf;

namespace FindingRules.Benchmarks.Deciding;

/// <summary>The workload's rules and studies as a pack has them.</summary>
public sealed class WorkloadPack
{
    private const int RulesPerTopic = 4;

    private static readonly ImmutableArray<string> _echoes = ["fibrillar", "hypoechoic", "anechoic", "heterogeneous"];
    private static readonly ImmutableArray<string> _states = ["regular", "frayed", "swollen", "displaced", "torn"];
    private static readonly Interval _plausible = Interval.Closed(0, WorkloadSize.MostTenths / 10);

    private readonly Dictionary<FindingSort, Finding> _findings;
    private readonly ImmutableArray<Structure> _structures;
    private int[][] _numbers = [];
    private readonly Dictionary<(FindingSort, FindingValue), SentFinding> _sent = [];

    /// <param name="absentStructures">Structures beside those of the studies; further rules may speak of them.</param>
    public WorkloadPack(ImmutableArray<RuleSketch> rules, int absentStructures = 0)
    {
        _findings = new()
        {
            [FindingSort.Thickness] = Measure("thickness", Unit.Millimetre, _plausible, new Rational(1, 2)),
            [FindingSort.Length] = Measure("length", Unit.Millimetre, _plausible),
            [FindingSort.Echo] = Choice("echo", null, _echoes),
            [FindingSort.State] = Choice("state", null, _states),
            [FindingSort.Shadowing] = Sign("shadowing"),
        };
        var kind = Kind("part", null, _findings.Values);
        _structures = [.. Enumerable.Range(0, WorkloadSize.Structures + absentStructures).Select(i => Structure($"part-{i:00000}", kind, isPaired: true))];
        var vocabulary = Vocabulary([], [kind], _structures, []);
        var topics = rules.GroupBy(r => r.Structure).SelectMany(g => g.Select((rule, i) => (rule, Topic: i / RulesPerTopic)))
            .GroupBy(r => (r.rule.Structure, r.Topic))
            .Select(g => (g.Key, Topic: Topic(
                $"topic-{g.Key.Structure:00000}-{g.Key.Topic:0000}", Each(_structures[g.Key.Structure]), isPerStructure: false,
                Enumerable.Range(0, RulesPerTopic).Select(v => $"value-{v}"))))
            .ToDictionary(t => t.Key, t => t.Topic);
        var symbols = new Symbols { Vocabulary = vocabulary, Topics = ByName(topics.Values, t => t.Name) };
        Pack = Pack(symbols, rules.GroupBy(r => r.Structure).SelectMany(g => g.Select((rule, i) =>
            Rule(rule, topics[(rule.Structure, i / RulesPerTopic)], i % RulesPerTopic))));
    }

    public Pack Pack { get; }

    internal void Number(RuleNetwork network) => _numbers =
    [
        .. _structures.Select(network.PlanOf).Append(network.StudyPlan).OrderBy(p => p.Number)
            .Select(plan => plan.Own.Planes.Clauses.Select(position => NumberOf(plan.Rules[position].Rule.Id)).ToArray()),
    ];

    private static string IdOf(int rule) => $"RULE-{rule:00000}";

    private static int NumberOf(string id) => int.Parse(id.AsSpan("RULE-".Length), System.Globalization.CultureInfo.InvariantCulture);

    public Study StudyOf(in StudyFacts facts)
    {
        var subjects = ImmutableArray.CreateBuilder<StudySubject>();
        for (var i = 0; i < WorkloadSize.Structures; i++)
            subjects.Add(new StudySubject(
                _structures[i], Side.Right, IsNormal: false, IsNotAssessable: false,
                new Findings(ByName(Sent(facts[i]), f => f.Finding.Name)), [], Nowhere));
        return new Study { Key = "S-1", Subjects = subjects.ToImmutable(), Location = Nowhere };
    }

    /// <summary>By clause of the plan, each rule of the workload being one: its rule's number.</summary>
    internal int[] NumbersOf(StructurePlan plan) => _numbers[plan.Number];

    /// <summary>Writes the numbers of the rules that are true into the room given, and says how many they are.</summary>
    public static int Fired(RuleNetwork network, Study study, int[] fired)
    {
        var count = 0;
        foreach (var rule in Evaluator.Decide(network, study).Rules)
            if (rule.Truth == Truth.True)
                fired[count++] = NumberOf(rule.Rule.Id);
        return count;
    }

    private IEnumerable<SentFinding> Sent(SiteFacts site)
    {
        if (!double.IsNaN(site.Thickness)) yield return Sent(FindingSort.Thickness, Millimetres(site.Thickness));
        if (!double.IsNaN(site.Length)) yield return Sent(FindingSort.Length, Millimetres(site.Length));
        if (site.Echo >= 0) yield return Sent(FindingSort.Echo, new ChoiceValue(_echoes[site.Echo]));
        if (site.State >= 0) yield return Sent(FindingSort.State, new ChoiceValue(_states[site.State]));
        if (site.Shadowing >= 0) yield return Sent(FindingSort.Shadowing, new SignValue(site.Shadowing == 1));
    }

    // Equal findings are one object, so that thousands of studies lie in the cache as one that was just read would.
    private SentFinding Sent(FindingSort sort, FindingValue value)
    {
        if (!_sent.TryGetValue((sort, value), out var sent)) _sent.Add((sort, value), sent = new SentFinding(_findings[sort], value, Nowhere));
        return sent;
    }

    private static MeasuredValue Millimetres(double value)
    {
        var exact = new Rational((int)Math.Round(value * 10), 10);
        return new MeasuredValue(Interval.Point(exact), Unit.Millimetre, IsBound: false, $"{exact} mm");
    }

    private Rule Rule(RuleSketch sketch, Topic topic, int value) => new(
        IdOf(sketch.Number), Each(_structures[sketch.Structure]),
        new AllOf([.. sketch.Comparisons.Select(Statement)], Nowhere), [new TopicConclusion(topic, topic.Values[value], Nowhere)], Nowhere)
    {
        Text = IdOf(sketch.Number),
        Because = "Made up for measuring.",
        Revision = "000000000000",
    };

    private Condition Statement(Comparison comparison)
    {
        var finding = _findings[comparison.Finding];
        return finding.Type switch
        {
            MeasureType measure => new ComparisonStatement(
                new MeasureExpression(Place.Own, finding, measure.Unit.Dimension, Nowhere),
                comparison.Relation == Relation.Below ? Comparator.Below : Comparator.AtLeast,
                new ConstantExpression(new Quantity(new Rational(comparison.Operand, 10), Unit.Millimetre), Nowhere), Nowhere),
            ChoiceType choice => new ValueStatement(
                Place.Own, finding, [.. choice.Values.Where((_, i) => (comparison.Operand & (1 << i)) != 0)], Nowhere),
            _ when comparison.Operand == 1 => new Negation(new SignStatement(Place.Own, finding, Nowhere), Nowhere),
            _ => new SignStatement(Place.Own, finding, Nowhere),
        };
    }
}
