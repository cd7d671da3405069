using System.Collections.Immutable;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;
using static FindingRules.Testing.Generators.ModelOf;

namespace FindingRules.Testing.Generators;

/// <summary>
/// Whole packs. Each rule is given a stage: it tests topics of earlier stages, answers and holds topics of its own or
/// later ones, and goes over rules of its own stage or later ones that were made after it; so there is never a cycle.
/// </summary>
public static class PackDrawing
{
    public static Pack Make(Draw draw, bool mayAskAssessed = true)
    {
        var symbols = TopicDrawing.Symbols(draw);
        var count = draw.Between(3, 14);
        var drafts = Enumerable.Range(0, count).Select(i => Draft(draw, symbols, i)).OrderBy(d => d.Stage).ToList();
        var rules = drafts.Select((draft, i) => Made(draw, symbols, draft, drafts.Skip(i + 1), mayAskAssessed));
        var pack = ModelOf.Pack(symbols, rules);
        return pack with
        {
            Withdrawn = draw.Chance(15) ? [new Withdrawal(draw.Of(pack.Rules).Id, new DateOnly(2026, 1, 31), "Withdrawn in a test.")] : [],
            Protocols = ByName(Protocols(draw, symbols.Vocabulary), p => p.Name),
        };
    }

    private sealed record RuleDraft(string Id, int Stage, Scope Scope, bool IsPerStructure, ImmutableArray<Conclusion> Conclusions);

    private static RuleDraft Draft(Draw draw, Symbols symbols, int number)
    {
        var topics = symbols.Topics.Values.ToList();
        var stage = draw.Between(0, topics.Count);
        var later = topics.Skip(stage).ToList();
        var id = $"RULE-{number:00}";
        if (later.Count == 0 || draw.Chance(12))
            return new RuleDraft(id, stage, TopicDrawing.Scope(draw, symbols.Vocabulary), false, [.. Advice(draw, symbols, 2)]);

        var main = draw.Of(later);
        var scope = Within(draw, symbols.Vocabulary, main.Scope);
        var others = later.Where(t => t != main && t.IsPerStructure == main.IsPerStructure && IsWithin(scope, t.Scope));
        var conclusions = new List<Conclusion> { Answer(draw, main, 82) };
        conclusions.AddRange(draw.Some(others, 25).Select(t => Answer(draw, t, 60)));
        conclusions.AddRange(Advice(draw, symbols, 1));
        return new RuleDraft(id, stage, scope, main.IsPerStructure, [.. conclusions]);
    }

    private static Conclusion Answer(Draw draw, Topic topic, int percentAnswered) => draw.Chance(percentAnswered)
        ? new TopicConclusion(topic, draw.Of(topic.Values), Nowhere)
        : new HoldConclusion(topic, Nowhere);

    private static IEnumerable<Conclusion> Advice(Draw draw, Symbols symbols, int least)
    {
        Conclusion[] all =
        [
            new CautionConclusion(symbols.Cautions["position"], Nowhere), new NextStepConclusion(symbols.NextSteps["refer"], Nowhere),
            new NextStepConclusion(symbols.NextSteps["ultrasound"], Nowhere),
            .. symbols.EvaluateSteps.Values.Select(s => new EvaluateConclusion(s, Nowhere)),
        ];
        return draw.Shuffle(all).Take(draw.Between(least - 1, 2)).DefaultIfEmpty(all[0]).Take(least == 1 && draw.Chance(60) ? 0 : 2);
    }

    private static Scope Within(Draw draw, Vocabulary vocabulary, Scope outer)
    {
        if (outer.IsStudy || draw.Chance(60)) return outer;
        var kinds = vocabulary.Kinds.Values.Select(k => Each(vocabulary, k)).Where(s => IsWithin(s, outer));
        return draw.Of([.. kinds, .. outer.Structures.Select(Each)]);
    }

    private static bool IsWithin(Scope inner, Scope outer) =>
        inner.IsStudy ? outer.IsStudy : !outer.IsStudy && inner.Structures.All(s => outer.Covers(s));

    private static Rule Made(Draw draw, Symbols symbols, RuleDraft draft, IEnumerable<RuleDraft> after, bool mayAskAssessed)
    {
        var testable = symbols.Topics.Values.Take(draft.Stage).ToList();
        var condition = new ConditionDrawing(draw, symbols, testable, mayAskAssessed).Make(draft.Scope, draw.Between(0, 3));
        var inferior = after.Where(d => d.IsPerStructure == draft.IsPerStructure && d.Scope.Overlaps(draft.Scope));
        return new Rule(draft.Id, draft.Scope, condition, draft.Conclusions, Nowhere)
        {
            Text = draft.Id,
            Because = "Made in a test.",
            Revision = "000000000000",
            IsPerStructure = draft.IsPerStructure,
            Over = [.. draw.Some(inferior, 12).Select(d => d.Id)],
        };
    }

    private static IEnumerable<Protocol> Protocols(Draw draw, Vocabulary vocabulary)
    {
        var items = draw.Some(vocabulary.Structures.Values, 50)
            .Select(s => new ProtocolItem(s, [s.Kind.Findings["thickness"]], Nowhere)).ToImmutableArray();
        return [new Protocol("shoulder", "shoulder", items, [], Says("nothing found"), [], Nowhere)];
    }
}
