using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;

namespace FindingRules.Engine.Reporting;

/// <summary>Published topics that have wording, as suggested impressions; of each subject those first that others rest on.</summary>
internal static class SuggestionWriter
{
    private static readonly Comparer<TopicAt> ByLayer = Comparer<TopicAt>.Create(static (a, b) =>
        a.Entry.Layer != b.Entry.Layer ? a.Entry.Layer - b.Entry.Layer : a.Position - b.Position);

    public static ImmutableArray<Suggestion> Write(Decided decided)
    {
        var suggestions = ImmutableArray.CreateBuilder<Suggestion>();
        var ofSubject = new List<TopicAt>();
        for (var i = 0; i < decided.Topics.Length; i++)
        {
            var topic = decided.Topics[i];
            if (topic.State.Status == TopicStatus.Published && ValueOf(topic).Says is not null) ofSubject.Add(topic);
            if (i + 1 < decided.Topics.Length && decided.Topics[i + 1].Index == topic.Index) continue;
            ofSubject.Sort(ByLayer);
            foreach (var published in ofSubject) suggestions.Add(Of(decided, published));
            ofSubject.Clear();
        }
        return suggestions.DrainToImmutable();
    }

    private static TopicValue ValueOf(TopicAt topic) => topic.Entry.Topic.Values[topic.State.Value];

    private static Suggestion Of(Decided decided, TopicAt topic)
    {
        var value = ValueOf(topic);
        var rules = topic.Givers();
        var references = ImmutableArray.CreateBuilder<RuleReference>(rules.Count);
        var choices = new Once<string>();
        // Held up by one rule that is clear of its thresholds, it stands whatever the others do.
        var isBorderline = true;
        foreach (var rule in rules)
        {
            references.Add(rule.Reference);
            if (rule.Rule.Choice is { } choice) choices.Add(choice);
            isBorderline &= rule.IsBorderline;
        }
        return new Suggestion(
            decided.Filler.Fill(value.Says!, topic.Index), topic.Entry.Topic.Name, value.Name, Words.Of(value.Certainty), topic.Subject,
            value.Code, references.MoveToImmutable(), decided.EvidenceOf(rules), SourceNotes.Of(rules, []), choices.ToImmutable(),
            isBorderline);
    }
}
