using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Vocabularies;
using static FindingRules.Testing.Generators.ModelOf;

namespace FindingRules.Testing.Generators;

/// <summary>
/// Samples whose rules speak of findings of their own subject and facts of the study, each against constants: several
/// statements about one finding in one rule, nests of <c>and</c>, <c>or</c> and <c>not</c>, and sometimes many rules.
/// </summary>
public sealed class OwnFindingDrawing(Draw draw, Vocabulary vocabulary)
{
    private const int ManyRules = 300;

    public static Sample Make(Draw draw)
    {
        var drawn = PackDrawing.Make(draw);
        var conditions = new OwnFindingDrawing(draw, drawn.Vocabulary);
        var rules = drawn.Rules.Select(r => With(r, conditions.Make(r.Scope, draw.Between(0, 4)))).ToList();
        if (draw.Chance(8))
        {
            var pattern = draw.Of(rules);
            rules.AddRange(Enumerable.Range(0, ManyRules).Select(i => new Rule(
                $"MANY-{i:000}", pattern.Scope, conditions.Make(pattern.Scope, 1),
                [new CautionConclusion(drawn.Symbols.Cautions["position"], Nowhere)], Nowhere)
            {
                Text = "many",
                Because = "Made in a test.",
                Revision = "000000000000",
            }));
        }
        var pack = drawn with { Rules = [.. rules.OrderBy(r => r.Id, StringComparer.Ordinal)] };
        return new Sample(pack, StudyDrawing.Make(draw, pack));
    }

    public Condition Make(Scope own, int depth)
    {
        var kind = depth == 0 ? 0 : draw.Below(100);
        if (kind < 25) return Leaf(own);
        if (kind < 58) return new AllOf(Parts(own, depth), Nowhere);
        if (kind < 83) return new AnyOf(Parts(own, depth), Nowhere);
        return new Negation(Make(own, depth - 1), Nowhere);
    }

    private ImmutableArray<Condition> Parts(Scope own, int depth) =>
        [.. Enumerable.Range(0, draw.Between(2, 4)).Select(_ => Make(own, depth - 1))];

    private Statement Leaf(Scope own)
    {
        var isFact = own.IsStudy || draw.Chance(10);
        var finding = draw.Of((isFact ? vocabulary.StudyFacts : own.Kind!.Findings).Values.ToList());
        var place = isFact ? Place.Study : Place.Own;
        if (draw.Chance(5)) return new AssessedStatement(place, finding, Nowhere);
        if (draw.Chance(4)) return new NotAssessableStatement(place, finding, Nowhere);
        return finding.Type switch
        {
            ChoiceType choice => new ValueStatement(
                place, finding, [.. draw.Shuffle(choice.Values).Take(draw.Between(1, choice.Values.Length - 1))], Nowhere),
            SignType => new SignStatement(place, finding, Nowhere),
            ExtentType extent => Extent(place, finding, extent.Axis.Points.Length - 1),
            MeasureType measure => Comparison(new MeasureExpression(place, finding, measure.Unit.Dimension, Nowhere), measure),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    private ExtentStatement Extent(Place place, Finding finding, int last)
    {
        var relation = draw.Of(Enum.GetValues<ExtentRelation>());
        var from = draw.Between(0, last);
        return new ExtentStatement(
            place, finding, relation, from, relation == ExtentRelation.Reaches ? from : draw.Between(from, last), Nowhere);
    }

    private Statement Comparison(MeasureExpression measure, MeasureType type)
    {
        if (draw.Chance(25)) return new BetweenStatement(measure, Limit(type), Limit(type), Nowhere);
        var comparator = draw.Of(Enum.GetValues<Comparator>());
        return draw.Chance(20)
            ? new ComparisonStatement(Limit(type), comparator, measure, Nowhere)
            : new ComparisonStatement(measure, comparator, Limit(type), Nowhere);
    }

    // Few numbers, in several units, so that values, bounds and limits often coincide.
    private ConstantExpression Limit(MeasureType type)
    {
        if (type.IsWhole) return new ConstantExpression(new Quantity(10 * draw.Between(2, 9), type.Unit), Nowhere);
        var halves = new Rational(draw.Between(0, 2 * VocabularyDrawing.GreatestLength), 2);
        return new ConstantExpression(
            draw.Chance(25) ? new Quantity(halves / 10, Unit.Centimetre) : new Quantity(halves, Unit.Millimetre), Nowhere);
    }

    private static Rule With(Rule rule, Condition condition) => new(rule.Id, rule.Scope, condition, rule.Conclusions, rule.DeclaredAt)
    {
        Text = rule.Text,
        Because = rule.Because,
        Revision = rule.Revision,
        IsPerStructure = rule.IsPerStructure,
        Over = rule.Over,
    };
}
