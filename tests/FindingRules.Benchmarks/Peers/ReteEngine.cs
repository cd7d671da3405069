using System.Collections.Immutable;
using System.Linq.Expressions;
using FindingRules.Workload;
using NRules;
using NRules.RuleModel;
using NRules.RuleModel.Builders;

namespace FindingRules.Benchmarks.Peers;

/// <summary>
/// The rules in NRules, a general-purpose engine that shares equal comparisons between rules. A study is a new session,
/// into which its structures are put as facts.
/// </summary>
internal sealed class ReteEngine(ImmutableArray<RuleSketch> rules)
{
    private readonly ISessionFactory _factory = new RuleCompiler().Compile(rules.Select(Definition));

    public int Run(SiteObject[] study, int[] fired)
    {
        var session = _factory.CreateSession();
        var found = new Found(fired);
        session.Insert(found);
        session.InsertAll(study);
        session.Fire();
        return found.Count;
    }

    /// <summary>Where the rules put their numbers.</summary>
    public sealed class Found(int[] fired)
    {
        public int Count { get; private set; }

        public void Add(int rule) => fired[Count++] = rule;
    }

    private static IRuleDefinition Definition(RuleSketch rule)
    {
        var builder = new RuleBuilder();
        builder.Name($"RULE-{rule.Number:00000}");
        var when = builder.LeftHandSide();
        var pattern = when.Pattern(typeof(SiteObject), "site");
        var site = pattern.Declaration.ToParameterExpression();
        pattern.Condition(Expression.Lambda(Expression.Equal(Expression.Property(site, nameof(SiteObject.Structure)), Expression.Constant(rule.Structure)), site));
        foreach (var comparison in rule.Comparisons) pattern.Condition(Expression.Lambda(Condition(site, comparison), site));
        when.Pattern(typeof(Found), "found");
        var number = rule.Number;
        Expression<Action<IContext, Found>> say = (context, found) => found.Add(number);
        builder.RightHandSide().Action(say);
        return builder.Build();
    }

    private static BinaryExpression Condition(ParameterExpression site, Comparison comparison)
    {
        var value = Expression.Property(site, comparison.Finding.ToString());
        return comparison.Relation switch
        {
            Relation.AtLeast => Expression.GreaterThanOrEqual(value, Expression.Constant(comparison.Operand / 10.0)),
            Relation.Below => Expression.LessThan(value, Expression.Constant(comparison.Operand / 10.0)),
            _ => comparison.Values.Select(v => Expression.Equal(value, Expression.Constant(v))).Aggregate(Expression.OrElse),
        };
    }
}
