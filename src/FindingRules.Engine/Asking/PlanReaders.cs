using FindingRules.Engine.Compiling;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Asking;

/// <summary>Which rules of a plan look at a finding or a topic, by position.</summary>
internal sealed class PlanReaders
{
    private static readonly int[] None = [];

    private readonly Dictionary<Finding, int[]> _own;
    private readonly Dictionary<Finding, int[]> _elsewhere;
    private readonly Dictionary<Topic, int[]> _topics;
    private readonly Dictionary<Topic, int[]> _topicsElsewhere;

    public PlanReaders(PlanRules plan)
    {
        var own = new Dictionary<Finding, List<int>>();
        var elsewhere = new Dictionary<Finding, List<int>>();
        var (topics, topicsElsewhere) = (new Dictionary<Topic, List<int>>(), new Dictionary<Topic, List<int>>());
        var (any, anyElsewhere) = (new List<int>(), new List<int>());
        for (var i = 0; i < plan.Rules.Length; i++)
            foreach (var (statement, isOwn) in StatementWalk.Of(plan.Rules[i].Rule.Condition))
            {
                if (statement is TopicStatement { Topic: var topic, Place: var where })
                    Add(StatementWalk.IsOwn(where, plan.Rules[i].Rule.Scope, isOwn) ? topics : topicsElsewhere, topic, i);
                foreach (var (place, finding) in StatementWalk.Findings(statement))
                {
                    var isHere = StatementWalk.IsOwn(place, plan.Rules[i].Rule.Scope, isOwn);
                    if (finding is null) (isHere ? any : anyElsewhere).Add(i);
                    else Add(isHere ? own : elsewhere, finding, i);
                }
            }
        (_own, _elsewhere) = (Arrays(own), Arrays(elsewhere));
        (_topics, _topicsElsewhere) = (Arrays(topics), Arrays(topicsElsewhere));
        (OfAnything, OfAnythingElsewhere) = ([.. any.Distinct()], [.. anyElsewhere.Distinct()]);
        AsksWhatIsKnown =
        [
            .. plan.Rules.Select(r => StatementWalk.Of(r.Rule.Condition)
                .Any(s => s.Statement is AssessedStatement or NotAssessableStatement)),
        ];
        AsksAnything = AsksWhatIsKnown.Contains(true);
        var inferiors = plan.Rules.SelectMany((entry, i) => entry.Superiors.Select(s => (Superior: s, Rule: i)))
            .ToLookup(p => p.Superior, p => p.Rule);
        Inferiors = [.. plan.Rules.Select((_, i) => inferiors[i].ToArray())];
    }

    /// <summary>Rules that ask whether anything of their structure was assessed.</summary>
    public int[] OfAnything { get; }

    public int[] OfAnythingElsewhere { get; }

    /// <summary>By position: the rule asks whether something was assessed.</summary>
    public bool[] AsksWhatIsKnown { get; }

    /// <summary>Some rule asks whether something was assessed.</summary>
    public bool AsksAnything { get; }

    /// <summary>By position: the rules that yield to the rule.</summary>
    public int[][] Inferiors { get; }

    public int[] Own(Finding finding) => _own.GetValueOrDefault(finding, None);

    public int[] Elsewhere(Finding finding) => _elsewhere.GetValueOrDefault(finding, None);

    public int[] Own(Topic topic) => _topics.GetValueOrDefault(topic, None);

    public int[] Elsewhere(Topic topic) => _topicsElsewhere.GetValueOrDefault(topic, None);

    private static void Add<T>(Dictionary<T, List<int>> lists, T key, int position)
        where T : notnull
    {
        if (!lists.TryGetValue(key, out var list)) lists[key] = list = [];
        if (list.Count == 0 || list[^1] != position) list.Add(position);
    }

    private static Dictionary<T, int[]> Arrays<T>(Dictionary<T, List<int>> lists)
        where T : notnull => lists.ToDictionary(l => l.Key, l => l.Value.ToArray());
}
