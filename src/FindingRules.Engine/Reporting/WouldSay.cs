using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Explaining.Changing;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Reporting;

/// <summary>How a conclusion would be worded for a study, whether or not anything concludes it. Not for several threads at once.</summary>
public sealed class WouldSay
{
    private const int OtherStructures = 3;
    private readonly Examination _examination;
    private readonly WordingFiller _filler;

    public WouldSay(RuleNetwork network, Study study)
    {
        _examination = Evaluator.Examine(network, study);
        _filler = new WordingFiller(_examination);
    }

    /// <summary>Null where the value has no wording, or the study nothing to fill a place of it with.</summary>
    public string? Impression(Topic topic, TopicValue value, Subject subject)
    {
        var index = Trials.Find(_examination, subject);
        if (value.Says is not { } says || index < 0) return null;
        ImmutableArray<WordingPart> parts = [.. says.Parts.Select(p => Named(p, topic, value))];
        return Whole(_filler.Fill(says with { Parts = parts }, index));
    }

    /// <summary>The step as a reading names it, with its text; null for a conclusion that is no step.</summary>
    public (string Step, string Text)? Step(Conclusion conclusion, Subject subject)
    {
        var index = Trials.Find(_examination, subject);
        if (index < 0) return null;
        switch (conclusion)
        {
            case NextStepConclusion { Step: var step }:
                return Whole(_filler.Fill(step.Says, index)) is { } text ? (step.Name, text) : null;
            case EvaluateConclusion { Step: var step }:
                var isPaired = step.Structure.IsPaired;
                var side = !isPaired ? Side.None : subject.Side == Side.None ? Side.Unknown : subject.Side;
                var target = _examination.SiteOf(step.Structure, side);
                return ($"evaluate {_examination[target].Subject.Key}", _filler.Fill(step.Says, target));
            default:
                return null;
        }
    }

    /// <summary>How many statements of the rule would have to be otherwise, at least, taking each for itself.</summary>
    public int Distance(Rule rule, Subject subject)
    {
        var index = Trials.Find(_examination, subject);
        var entry = _examination[index].Plan.Rules.First(r => r.Rule == rule);
        return Distance(rule.Condition, entry.Condition, index);
    }

    private int Distance(Condition condition, Node node, int index)
    {
        if (node.Decide(_examination, index, isWidened: false) == Truth.True) return 0;
        return (condition, node) switch
        {
            (AllOf all, AllNode nodes) => all.Parts.Select((p, i) => Distance(p, nodes.Parts[i], index)).Sum(),
            (AnyOf any, AnyNode nodes) => any.Parts.Select((p, i) => Distance(p, nodes.Parts[i], index)).Min(),
            // Other structures are far to look for.
            (Quantified, _) => OtherStructures,
            _ => 1,
        };
    }

    /// <summary>The topic's own name for the value, which is filled in only where the value was concluded.</summary>
    private static WordingPart Named(WordingPart part, Topic topic, TopicValue value) =>
        part is WordingPlace { Source: TopicSource source } place && source.Topic == topic
            ? new WordingText(place.Before + value.Title + place.After)
            : part;

    private static string? Whole(string text) => text.Contains(WordingFiller.NotStated, StringComparison.Ordinal) ? null : text;
}
