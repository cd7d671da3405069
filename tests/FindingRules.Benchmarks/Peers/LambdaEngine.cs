using System.Collections.Immutable;
using System.Globalization;
using FindingRules.Workload;
using RulesEngine.Models;

namespace FindingRules.Benchmarks.Peers;

/// <summary>
/// The rules in RulesEngine, which compiles expressions from text. A workflow for each structure, so that each rule sees only the
/// structure that it speaks of.
/// </summary>
internal sealed class LambdaEngine
{
    private readonly RulesEngine.RulesEngine _engine;
    private readonly string[] _workflows;

    public LambdaEngine(ImmutableArray<RuleSketch> rules)
    {
        var workflows = rules.GroupBy(r => r.Structure).OrderBy(g => g.Key).Select(g => new RulesEngine.Models.Workflow
        {
            WorkflowName = Name(g.Key),
            Rules = [.. g.Select(r => new RulesEngine.Models.Rule
            {
                RuleName = r.Number.ToString(CultureInfo.InvariantCulture),
                RuleExpressionType = RuleExpressionType.LambdaExpression,
                Expression = string.Join(" && ", r.Comparisons.Select(Text)),
            })],
        }).ToArray();
        _workflows = [.. Enumerable.Range(0, WorkloadSize.Structures).Select(Name)];
        _engine = new RulesEngine.RulesEngine(workflows, new ReSettings { EnableFormattedErrorMessage = false });
    }

    public int Run(SiteObject[] study, int[] fired)
    {
        var count = 0;
        foreach (var site in study)
            foreach (var result in _engine.ExecuteAllRulesAsync(_workflows[site.Structure], new RuleParameter("s", site)).AsTask().GetAwaiter().GetResult())
                if (result.IsSuccess)
                    fired[count++] = int.Parse(result.Rule.RuleName, CultureInfo.InvariantCulture);
        return count;
    }

    private static string Name(int structure) => $"part-{structure}";

    private static string Text(Comparison comparison) => comparison.Relation switch
    {
        Relation.AtLeast => string.Create(CultureInfo.InvariantCulture, $"s.{comparison.Finding} >= {comparison.Operand / 10.0:0.0}"),
        Relation.Below => string.Create(CultureInfo.InvariantCulture, $"s.{comparison.Finding} < {comparison.Operand / 10.0:0.0}"),
        _ => $"({string.Join(" || ", comparison.Values.Select(v => $"s.{comparison.Finding} == {v}"))})",
    };
}
