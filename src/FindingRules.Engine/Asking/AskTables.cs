using System.Collections.Concurrent;
using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Explaining.Changing;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Asking;

/// <summary>
/// What a pack asks of each finding: who reads it, and the answers that its rules tell apart. Made when it is first
/// needed, plan by plan and finding by finding.
/// </summary>
internal sealed class AskTables(Pack pack)
{
    private readonly ConcurrentDictionary<PlanRules, PlanReaders> _readers = new(ReferenceEqualityComparer.Instance);
    private readonly ConcurrentDictionary<PlanRules, PlanConsequences> _consequences = new(ReferenceEqualityComparer.Instance);
    private readonly ConcurrentDictionary<Finding, ImmutableArray<SlotTest>> _tests = [];
    private readonly ConcurrentDictionary<Finding, ImmutableArray<Cell>> _answers = [];
    private readonly Lazy<ILookup<Finding, Statement>> _statements = new(() => Statements(pack));

    public PlanReaders ReadersOf(StructurePlan plan) => _readers.GetOrAdd(plan.Own, p => new PlanReaders(p));

    public PlanConsequences ConsequencesOf(StructurePlan plan) => _consequences.GetOrAdd(plan.Own, p => new PlanConsequences(p));

    /// <summary>
    /// Values of which each stands for all that the rules take alike. Of a measure that is known as a bound, those inside it.
    /// </summary>
    /// <param name="isSentAsNormal">
    /// A bound that departs from normal has kept normals from being filled in: its answers are those that depart as well.
    /// </param>
    public ImmutableArray<Cell> AnswersOf(Finding finding, FindingValue? known, bool isSentAsNormal) => (finding.Type, known) switch
    {
        (MeasureType { Normal: { } normal } type, MeasuredValue bound)
            when isSentAsNormal && normal.Widen(type.Precision) is var passes && !passes.Contains(bound.Interval) =>
        [
            .. Cells.Others(type with { Plausible = type.Plausible.Intersect(bound.Interval) }, TestsOf(finding), null, normal: true)
                .Where(c => c.Value is MeasuredValue measured && !passes.Contains(measured.Interval)),
        ],
        (MeasureType type, MeasuredValue bound) =>
            Cells.Others(type with { Plausible = type.Plausible.Intersect(bound.Interval) }, TestsOf(finding), null, normal: false),
        _ => _answers.GetOrAdd(finding, f => Cells.Others(f.Type, TestsOf(f), null, normal: false)),
    };

    private ImmutableArray<SlotTest> TestsOf(Finding finding) =>
        _tests.GetOrAdd(finding, f => [.. _statements.Value[f].SelectMany(s => Tests(s, f)).Distinct()]);

    private static ILookup<Finding, Statement> Statements(Pack pack)
    {
        var derived = pack.Rules.Where(pack.IsInForce).SelectMany(r => StatementWalk.Of(r.Condition).Select(s => s.Statement));
        return derived.SelectMany(s => StatementWalk.Findings(s).Select(f => (s, f.Finding)))
            .Where(p => p.Finding is not null).ToLookup(p => p.Finding!, p => p.s);
    }

    /// <summary>A comparison with another measurement turns nowhere in particular while that is open.</summary>
    private static IEnumerable<SlotTest> Tests(Statement statement, Finding finding) => statement switch
    {
        ValueStatement s => [new IsOneOf(s.Values)],
        ExtentStatement s => [new Reaches(s.Relation, s.From, s.To)],
        ComparisonStatement or BetweenStatement => StatementWalk.Findings(statement).Where(m => m.Finding == finding)
            .Select(m => new ComparisonSolver((_, _) => null).Of(statement, m.Place, finding)).Where(t => t.IsAlone),
        _ => [],
    };
}
