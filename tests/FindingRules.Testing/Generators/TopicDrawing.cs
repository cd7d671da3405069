using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Vocabularies;
using static FindingRules.Testing.Generators.ModelOf;

namespace FindingRules.Testing.Generators;

/// <summary>Everything that rules may name: topics in the order in which they are settled, measures, steps, cautions.</summary>
internal static class TopicDrawing
{
    public static Symbols Symbols(Draw draw)
    {
        var vocabulary = VocabularyDrawing.Make(draw);
        var plain = new Symbols { Vocabulary = vocabulary, Topics = ByName(Topics(draw, vocabulary), t => t.Name) };
        return plain with
        {
            DerivedMeasures = ByName(Derived(draw, vocabulary), d => d.Name),
            NextSteps = ByName(
                [new NextStep("ultrasound", Says("ultrasound"), Urgency.Soon, null, [], Nowhere),
                 new NextStep("refer", Says("refer"), Urgency.Routine, null, [], Nowhere)], s => s.Name),
            Cautions = ByName([new Caution("position", Says("position"), [], Nowhere)], c => c.Name),
            EvaluateSteps = ByName(
                [.. vocabulary.Structures.Values.Take(2).Select(s => new EvaluateStep(
                    s, Says($"look at {s.Name}"), Urgency.Routine, [s.Kind.Findings["thickness"]], Nowhere))],
                s => s.Structure.Name),
        };
    }

    /// <summary>A scope for a study, a kind or one structure of it.</summary>
    public static Scope Scope(Draw draw, Vocabulary vocabulary) => draw.Weighted<Func<Scope>>(
        (18, () => Model.Vocabularies.Scope.Study),
        (62, () => Each(vocabulary, draw.Of(vocabulary.Kinds.Values.ToList()))),
        (20, () => Each(draw.Of(vocabulary.Structures.Values.ToList()))))();

    private static IEnumerable<Topic> Topics(Draw draw, Vocabulary vocabulary)
    {
        var count = draw.Between(1, 4);
        for (var i = 0; i < count; i++)
        {
            var scope = Scope(draw, vocabulary);
            var values = new[] { "low", "middle", "high" }.Take(draw.Between(2, 3));
            yield return Topic($"topic-{(char)('a' + i)}", scope, !scope.IsStudy && draw.Chance(35), values);
        }
    }

    private static IEnumerable<DerivedMeasure> Derived(Draw draw, Vocabulary vocabulary)
    {
        var places = new PlaceDrawing(draw, vocabulary);
        var quantities = new QuantityDrawing(draw, places, []);
        var found = new List<DerivedMeasure>();
        foreach (var kind in draw.Some(vocabulary.Kinds.Values, 50))
        {
            var scope = Each(vocabulary, kind);
            if (draw.Chance(60)) found.Add(Made($"{kind.Name}-length", scope, Unit.Millimetre, quantities.LengthOf(scope, 2)));
            else found.Add(Made($"{kind.Name}-share", scope, Unit.Percent, quantities.Plain(scope)));
        }
        if (found.Count > 0 && draw.Chance(30))
        {
            var inner = found[0];
            found.Add(Made("of-another", inner.Scope, inner.Unit, new DerivedExpression(
                draw.Chance(70) ? Place.Own : new Place(PlaceRelation.Contralateral), inner, Nowhere)));
        }
        return found;
    }

    private static DerivedMeasure Made(string name, Scope scope, Unit unit, QuantityExpression expression) =>
        new(name, name, scope, unit, expression, Nowhere);
}
