using System.Collections.Immutable;
using FindingRules.Language.Syntax;
using FindingRules.Model.Conditions;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;

namespace FindingRules.Language.Binding;

/// <summary>What follows from a rule.</summary>
internal sealed class ConclusionBinder(BindingContext context)
{
    private Symbols Symbols => context.Symbols;

    public ImmutableArray<Conclusion>? Bind(ImmutableArray<ConclusionSyntax> conclusions)
    {
        var bound = conclusions.Select(Bind).ToList();
        if (bound.Any(c => c is null)) return null;
        ImmutableArray<Conclusion> whole = [.. bound.Select(c => c!)];
        return new ConclusionCheck(context).Agree(whole) ? whole : null;
    }

    private Conclusion? Bind(ConclusionSyntax conclusion)
    {
        if (conclusion.Probability is { } probability) return Probability(conclusion, probability);
        if (!IsTopicValue(conclusion) && Hyphens.Find(context, conclusion.Words) is { } hyphens) return Report(hyphens);
        return conclusion switch
        {
            { Opening.Text: "evaluate" } => Evaluate(conclusion),
            { Opening.Text: "hold" } => Hold(conclusion),
            { Opening: not null } => Caution(conclusion),
            { Next: not null } => Next(conclusion),
            { Words.Length: 1 } => OneWord(conclusion),
            _ => TopicAndValue(conclusion),
        };
    }

    private Conclusion? Evaluate(ConclusionSyntax conclusion)
    {
        var (name, at) = NameOf(conclusion);
        if (context.Vocabulary.Kinds.TryGetValue(name, out var kind) && !context.Vocabulary.Structures.ContainsKey(name))
            return Report(ConclusionNameMessages.EvaluateKind(at, name, [.. context.Vocabulary.StructuresOf(kind).Select(s => s.Name)]));
        if (!context.Vocabulary.Structures.TryGetValue(name, out var structure))
            return Report(NameMessages.UnknownStructure(at, name, [.. context.Vocabulary.Structures.Keys]));
        if (!Symbols.EvaluateSteps.TryGetValue(name, out var step))
            return Report(ConclusionNameMessages.NoEvaluateStep(at, name, [.. Symbols.EvaluateSteps.Keys]));
        return structure.IsPaired && !context.HasSide
            ? Report(ConclusionNameMessages.EvaluateNeedsSide(at, name, context.Scope.Written))
            : new EvaluateConclusion(step, context.At(conclusion.Span));
    }

    private Conclusion? Hold(ConclusionSyntax conclusion)
    {
        var (name, at) = NameOf(conclusion);
        if (!Symbols.Topics.TryGetValue(name, out var topic))
            return Report(ConclusionNameMessages.UnknownTopic(at, name, [.. TopicsInScope().Select(t => t.Name)]));
        return IsInScope(topic)
            ? new HoldConclusion(topic, context.At(conclusion.Span))
            : Report(ConclusionNameMessages.TopicOfOthers(at, name, topic.Scope.Written, context.Scope.Written));
    }

    private Conclusion? Caution(ConclusionSyntax conclusion)
    {
        var (name, at) = NameOf(conclusion);
        return Symbols.Cautions.TryGetValue(name, out var caution)
            ? new CautionConclusion(caution, context.At(conclusion.Span))
            : Report(ConclusionNameMessages.UnknownCaution(at, name, [.. Symbols.Cautions.Keys]));
    }

    private Conclusion? Next(ConclusionSyntax conclusion)
    {
        var (name, at) = NameOf(conclusion);
        return Symbols.NextSteps.TryGetValue(name, out var step)
            ? new NextStepConclusion(step, context.At(conclusion.Span))
            : Report(ConclusionNameMessages.UnknownStep(at, name, [.. Symbols.NextSteps.Keys]));
    }

    private ProbabilityConclusion? Probability(ConclusionSyntax conclusion, ProbabilitySyntax probability)
    {
        var (name, at) = NameOf(conclusion);
        var before = new QuantityBinder(context).Bind(probability.Before);
        var sign = probability.Sign;
        if (sign.Text is not ("positive" or "negative"))
            return Report<ProbabilityConclusion>(ConclusionNameMessages.NeitherPositiveNorNegative(context.At(sign.Span), sign.Text));
        if (!Symbols.References.TryGetValue(name, out var reference))
            return Report<ProbabilityConclusion>(ConclusionNameMessages.UnknownReference(at, name, [.. Symbols.References.Keys]));
        if (reference.Accuracy is null)
            return Report<ProbabilityConclusion>(ConclusionNameMessages.ReferenceWithoutAccuracy(at, name));
        if (before is null) return null;
        if (before is ConstantExpression { Dimension: var plain, Quantity.InBase: var share }
            && plain == Dimension.None && (share < Rational.Zero || share > Rational.One))
            return Report<ProbabilityConclusion>(ConclusionNameMessages.NotAShare(
                before.Location, context.Written(probability.Before.Span)));
        return before.Dimension == Dimension.None
            ? new ProbabilityConclusion(reference, before, sign.Text == "positive", context.At(conclusion.Span))
            : Report<ProbabilityConclusion>(ConclusionNameMessages.NoProbability(
                before.Location, context.Written(probability.Before.Span), before.Dimension.Title));
    }

    private Conclusion? OneWord(ConclusionSyntax conclusion)
    {
        var (name, at) = NameOf(conclusion);
        var ways = new List<(string SayAs, Conclusion Conclusion)>();
        foreach (var topic in TopicsInScope())
            if (topic.Find(name) is { } value)
                ways.Add(($"{topic.Name} {name}", new TopicConclusion(topic, value, at)));
        if (Symbols.NextSteps.TryGetValue(name, out var step)) ways.Add(($"{name} next", new NextStepConclusion(step, at)));
        if (Symbols.Cautions.TryGetValue(name, out var caution)) ways.Add(($"caution {name}", new CautionConclusion(caution, at)));
        return ways.Count switch
        {
            1 => ways[0].Conclusion,
            0 => Report(UnknownWord(name, at)),
            _ => Report(ConclusionNameMessages.Ambiguous(at, name, [.. ways.Select(w => w.SayAs)])),
        };
    }

    private Message UnknownWord(string name, Model.Text.Location at)
    {
        if (Symbols.Topics.TryGetValue(name, out var bare))
            return ConclusionNameMessages.TopicWithoutValue(at, name, [.. bare.Values.Select(v => v.Name)]);
        if (Symbols.Topics.Values.FirstOrDefault(t => t.Find(name) is not null) is { } elsewhere)
            return ConclusionNameMessages.TopicOfOthers(at, elsewhere.Name, elsewhere.Scope.Written, context.Scope.Written);
        if (context.Vocabulary.Structures.ContainsKey(name)) return ConclusionNameMessages.StructureAlone(at, name);
        return ConclusionNameMessages.Unknown(
            at, name,
            [.. TopicsInScope().SelectMany(t => t.Values).Select(v => v.Name), .. Symbols.NextSteps.Keys, .. Symbols.Cautions.Keys]);
    }

    private Conclusion? TopicAndValue(ConclusionSyntax conclusion)
    {
        var word = conclusion.Words[0];
        var at = context.At(word.Span);
        if (!Symbols.Topics.TryGetValue(word.Text, out var topic))
            return Report(ConclusionNameMessages.UnknownTopic(at, word.Text, [.. TopicsInScope().Select(t => t.Name)]));
        if (!IsInScope(topic))
            return Report(ConclusionNameMessages.TopicOfOthers(at, topic.Name, topic.Scope.Written, context.Scope.Written));
        var rest = conclusion.Words[1].Span.Through(conclusion.Words[^1].Span);
        var written = context.Written(rest);
        if (conclusion.Words.Length > 2) return Report(NameMessages.TooManyWords(context.At(rest), written, topic.Name, "`;`"));
        return topic.Find(written) is { } value
            ? new TopicConclusion(topic, value, context.At(conclusion.Span))
            : Report(NameMessages.UnknownValue(context.At(rest), topic.Name, written, [.. topic.Values.Select(v => v.Name)]));
    }

    private bool IsTopicValue(ConclusionSyntax conclusion) =>
        conclusion.Words is [var topic, var value]
        && Symbols.Topics.GetValueOrDefault(topic.Text)?.Find(value.Text) is not null;

    private IEnumerable<Topic> TopicsInScope() => Symbols.Topics.Values.Where(IsInScope);

    private bool IsInScope(Topic topic) => ScopeNames.Covers(topic.Scope, context.Scope);

    private (string Name, Model.Text.Location At) NameOf(ConclusionSyntax conclusion) =>
        (context.Written(conclusion.WordsSpan), context.At(conclusion.WordsSpan));

    private Conclusion? Report(Message message) => Report<Conclusion>(message);

    private T? Report<T>(Message message)
        where T : Conclusion
    {
        context.Report(message);
        return null;
    }
}
