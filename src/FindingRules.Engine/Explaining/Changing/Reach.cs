using System.Collections.Immutable;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Explaining.Changing;

/// <summary>
/// Every finding on which an outcome can depend, with all that is asked of it: through the topics that rules test, the
/// rules that go before them, and those that hold.
/// </summary>
internal sealed class Reach(Examination examination)
{
    private const string Mixed = "some rules compare measurements with each other, and not every pair of values was tried";

    private readonly SortedDictionary<FindingSlot, List<SlotTest>> _tests = [];
    private readonly HashSet<(int, int)> _rules = [];
    private readonly HashSet<(int, Topic)> _topics = [];
    private readonly HashSet<(int, Condition)> _conditions = [];
    private readonly HashSet<(bool, Subject)> _wholes = [];
    private readonly SortedSet<string> _gaps = new(StringComparer.Ordinal);
    private bool _isCore;

    public IReadOnlyDictionary<FindingSlot, List<SlotTest>> Tests => _tests;

    /// <summary>Structures of which it is asked whether anything at all was assessed.</summary>
    public IReadOnlySet<(bool IsEarlier, Subject Structure)> Wholes => _wholes;

    /// <summary>Measurements are compared with each other: what one of them has to be depends on what another becomes.</summary>
    public bool HasPairs { get; private set; }

    /// <summary>What other findings may decide in ways that are not searched.</summary>
    public ImmutableArray<string> Gaps(int changes) => HasPairs && changes > 1 ? [.. _gaps.Append(Mixed).Distinct()] : [.. _gaps];

    /// <summary>Nothing that the outcome can depend on was left out.</summary>
    public bool IsWhole => _wholes.Count == 0 && _gaps.All(g => g == Mixed);

    /// <summary>The rule itself, and the topics that it answers.</summary>
    public void AddWithAnswers(RuleAt rule)
    {
        Add(rule);
        foreach (var given in rule.Rule.Topics) Add(rule.Index, given.Topic);
    }

    public void Add(RuleAt rule)
    {
        if (!_rules.Add((rule.Index, rule.Position))) return;
        Add(rule.Rule.Condition, rule.Entry.Condition, rule.Index);
        foreach (var superior in rule.Entry.Superiors) Add(rule with { Position = superior });
    }

    /// <summary>Only what the rule itself asks, and the rules that give the answers it asks for.</summary>
    public void AddCore(RuleAt rule)
    {
        _isCore = true;
        if (_rules.Add((rule.Index, rule.Position))) Add(rule.Rule.Condition, rule.Entry.Condition, rule.Index);
    }

    public void Add(int index, Topic topic)
    {
        if (!_topics.Add((index, topic))) return;
        var plan = examination[index].Plan;
        if (plan.Topics.FirstOrDefault(t => t.Topic == topic) is not { } entry) return;
        foreach (var position in entry.Givers.Select(g => g.Rule).Concat(entry.Holders).Distinct())
            Add(new RuleAt(examination, index, position));
    }

    public void Add(Condition condition, Node node, int instance)
    {
        if (!_conditions.Add((instance, condition))) return;
        switch (condition, node)
        {
            case (AllOf all, AllNode nodes):
                for (var i = 0; i < nodes.Parts.Length; i++) Add(all.Parts[i], nodes.Parts[i], instance);
                break;
            case (AnyOf any, AnyNode nodes):
                for (var i = 0; i < nodes.Parts.Length; i++) Add(any.Parts[i], nodes.Parts[i], instance);
                break;
            case (Negation negation, NotNode not):
                Add(negation.Part, not.Part, instance);
                break;
            case (Quantified quantified, CountNode count):
                foreach (var site in count.Sites(examination, instance).ToList())
                    if (site < 0) NoSide();
                    else Add(quantified.Where, count.Where, site);
                break;
            case (Statement statement, StatementNode leaf):
                foreach (var chosen in leaf.Choices(examination, instance).ToList()) Statement(statement, leaf, instance, chosen);
                break;
        }
    }

    private void Statement(Statement statement, StatementNode node, int instance, int[] chosen)
    {
        switch (statement)
        {
            case ValueStatement s: Test(s.Place, s.Finding, new IsOneOf(s.Values)); break;
            case SignStatement s: Test(s.Place, s.Finding, new IsPresent()); break;
            case ExtentStatement s: Test(s.Place, s.Finding, new Reaches(s.Relation, s.From, s.To)); break;
            case NotAssessableStatement s: Test(s.Place, s.Finding, new IsKnown()); break;
            case AssessedStatement { Finding: { } finding } s: Test(s.Place, finding, new IsKnown()); break;
            case AssessedStatement s: Whole(s.Place, instance, chosen[^1]); break;
            case TopicStatement s: TopicAt(s, instance, chosen[^1]); break;
            default: Compared(); break;
        }

        void Test(Place place, Finding finding, SlotTest test)
        {
            var at = node.Places.IndexOf(place) is var i and >= 0 ? chosen[i] : -1;
            Add(place, instance, at, finding, test);
        }

        void Compared()
        {
            var amounts = new AmountReader(examination, node, chosen);
            var solver = new ComparisonSolver((place, finding) => (amounts.ValueOf(place, finding) as MeasuredValue)?.Interval);
            foreach (var (place, finding) in Operands(statement).SelectMany(o => MeasuresIn.Of(o, Place.Own)).Distinct())
            {
                var test = solver.Of(statement, place, finding);
                if (!test.IsExact) _gaps.Add(Mixed);
                HasPairs |= !test.IsAlone;
                Test(place, finding, test);
            }
        }
    }

    private static IEnumerable<QuantityExpression> Operands(Statement statement) => statement switch
    {
        ComparisonStatement s => [s.Left, s.Right],
        BetweenStatement s => [s.Value, s.Low, s.High],
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private void TopicAt(TopicStatement statement, int instance, int at)
    {
        if (statement.Place.IsEarlier) return;
        if (at < 0)
        {
            if (MissingFinder.SubjectOf(examination, statement.Place, instance) is not { Structure: { } structure } subject)
            {
                NoSide();
                return;
            }
            at = examination.SiteOf(structure, subject.Side);
        }
        else if (examination[at].IsLesion && statement.Topic.IsPerStructure) at = examination[at].Whole;
        if (_isCore) Givers(at, statement);
        else Add(at, statement.Topic);
    }

    private void Givers(int index, TopicStatement statement)
    {
        foreach (var entry in examination[index].Plan.Topics.Where(t => t.Topic == statement.Topic))
            foreach (var giver in entry.Givers.Where(g => statement.Values.Contains(entry.Topic.Values[g.Value].Name)))
                AddCore(new RuleAt(examination, index, giver.Rule));
    }

    private void Whole(Place place, int instance, int at)
    {
        _gaps.Add("a rule asks whether anything of a structure was assessed, and not every way to do that was tried");
        var subject = at >= 0 ? examination[at].Subject : MissingFinder.SubjectOf(examination, place, instance);
        if (subject?.Structure is not { } structure) return;
        _wholes.Add((place.IsEarlier, subject.Whole));
        var known = structure.Kind.Findings.Values
            .Where(f => examination.ValueAt(at, examination.Network.Slots[f]) is not (null or NotAssessableValue)).ToList();
        var asked = known.Count > 0 ? known : Completing(structure);
        foreach (var finding in asked) Add(place, instance, at, finding, new IsKnown());
    }

    /// <summary>The findings by which a look at the structure counts as complete; else any of its findings.</summary>
    private IEnumerable<Finding> Completing(Structure structure) =>
        examination.Network.Pack.Symbols.EvaluateSteps.GetValueOrDefault(structure.Name)?.CompletedBy.Take(1)
        ?? structure.Kind.Findings.Values.Take(1);

    private void Add(Place place, int instance, int at, Finding finding, SlotTest test)
    {
        var subject = at >= 0 ? examination[at].Subject : MissingFinder.SubjectOf(examination, place, instance);
        if (subject is null)
        {
            NoSide();
            return;
        }
        var slot = new FindingSlot(place.IsEarlier, subject, finding);
        if (!_tests.TryGetValue(slot, out var tests)) _tests.Add(slot, tests = []);
        tests.Add(test);
    }

    private void NoSide() => _gaps.Add("a side was not sent, and what depends on it was not tried");
}
