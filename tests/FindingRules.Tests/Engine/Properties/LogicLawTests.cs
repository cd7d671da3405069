using System.Collections.Immutable;
using CsCheck;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;
using FindingRules.Testing.Generators;
using Xunit;
using static FindingRules.Testing.Generators.ModelOf;

namespace FindingRules.Tests.Engine.Properties;

/// <summary>Two conditions that mean the same come out the same, for every subject of random studies.</summary>
public sealed class LogicLawTests
{
    private static readonly ImmutableSortedDictionary<string, Func<Given, (Condition, Condition)>> _laws =
        new Dictionary<string, Func<Given, (Condition, Condition)>>
        {
            ["double negation"] = g => (Not(Not(g.A)), g.A),
            ["not both is either not"] = g => (Not(And(g.A, g.B)), Or(Not(g.A), Not(g.B))),
            ["not either is both not"] = g => (Not(Or(g.A, g.B)), And(Not(g.A), Not(g.B))),
            ["and takes any order"] = g => (And(g.A, g.B, g.C), And(g.C, And(g.B, g.A))),
            ["or takes any order"] = g => (Or(g.A, g.B, g.C), Or(g.C, Or(g.B, g.A))),
            ["and spreads over or"] = g => (And(g.A, Or(g.B, g.C)), Or(And(g.A, g.B), And(g.A, g.C))),
            ["absorption"] = g => (And(g.A, Or(g.A, g.B)), g.A),
            ["no is not any"] = g => (Count(Quantifier.No, g), Not(Count(Quantifier.Any, g))),
            ["every is none without"] = g => (Count(Quantifier.Every, g), Count(Quantifier.No, g with { Where = Not(g.Where) })),
            ["any is not every without"] = g => (Count(Quantifier.Any, g), Not(Count(Quantifier.Every, g with { Where = Not(g.Where) }))),
            ["any is at least one"] = g => (Count(Quantifier.Any, g), Count(Quantifier.AtLeast, g)),
        }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    public static TheoryData<string> Laws { get; } = [.. _laws.Keys];

    [Theory]
    [MemberData(nameof(Laws))]
    public void Holds(string law) => Pairs(_laws[law]).Sample(
        sample =>
        {
            var outcome = BothInterpreters.Decide(sample.Pack, sample.Study);
            var left = outcome.Rules.Where(r => r.Rule.Id == "ZZ-LEFT");
            var right = outcome.Rules.Where(r => r.Rule.Id == "ZZ-RIGHT");
            Assert.Equal(left.Select(r => (r.Subject, r.Truth, r.Widened)), right.Select(r => (r.Subject, r.Truth, r.Widened)));
        },
        iter: 40, print: s => s.ToString());

    private sealed record Given(Condition A, Condition B, Condition C, Scope Range, Condition Where);

    private static Gen<Sample> Pairs(Func<Given, (Condition, Condition)> law) => new Drawn<Sample>(draw =>
    {
        var plain = PackDrawing.Make(draw);
        var scope = draw.Of(plain.Rules).Scope;
        var range = Each(plain.Vocabulary, draw.Of(plain.Vocabulary.Kinds.Values.ToList()));
        var conditions = new ConditionDrawing(draw, plain.Symbols, [.. plain.Symbols.Topics.Values], mayAskAssessed: true);
        var (left, right) = law(new Given(
            conditions.Make(scope, 1), conditions.Make(scope, 1), conditions.Make(scope, 1), range, conditions.Make(range, 1)));
        var pack = plain with { Rules = plain.Rules.AddRange(Concluding("ZZ-LEFT", left), Concluding("ZZ-RIGHT", right)) };
        return new Sample(pack, StudyDrawing.Make(draw, pack));

        Rule Concluding(string id, Condition condition) => new(
            id, scope, condition, [new CautionConclusion(plain.Symbols.Cautions["position"], Nowhere)], Nowhere)
        {
            Text = id,
            Because = "Made in a test.",
            Revision = "000000000000",
        };
    });

    private static Negation Not(Condition part) => new(part, Nowhere);

    private static AllOf And(params ImmutableArray<Condition> parts) => new(parts, Nowhere);

    private static AnyOf Or(params ImmutableArray<Condition> parts) => new(parts, Nowhere);

    private static Quantified Count(Quantifier quantifier, Given given) => new(quantifier, 1, given.Range, given.Where, Nowhere);
}
