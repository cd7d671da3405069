using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Readings;

namespace FindingRules.Engine.Reporting;

/// <summary>Published topics that have wording, as suggested impressions.</summary>
internal static class SuggestionWriter
{
    public static ImmutableArray<Suggestion> Write(Decided decided)
    {
        var filler = new WordingFiller(decided.Examination);
        return [.. decided.Instances.SelectMany(i => Of(decided.Examination, i, filler))];
    }

    private static IEnumerable<Suggestion> Of(Examination examination, int index, WordingFiller filler)
    {
        var instance = examination[index];
        var published = instance.Plan.Topics.Select((entry, i) => (entry, state: instance.Topics[i]))
            .Where(t => t.state is { IsDecided: true, Status: TopicStatus.Published })
            .OrderBy(t => t.entry.Layer).ThenBy(t => t.entry.Topic.Name, StringComparer.Ordinal);
        foreach (var (entry, state) in published)
        {
            var value = entry.Topic.Values[state.Value];
            if (value.Says is null) continue;
            var rules = Givers(examination, index, entry, state.Value);
            yield return new Suggestion(
                filler.Fill(value.Says, index), entry.Topic.Name, value.Name, value.Certainty.ToString().ToLowerInvariant(),
                instance.Subject.Key, value.Code,
                [.. rules.Select(r => r.Reference)], EvidenceWriter.Of(rules), SourceNotes.Of(rules.SelectMany(r => r.Rule.Sources)),
                [.. rules.Select(r => r.Rule.Choice).OfType<string>().Distinct()],
                // Held up by one rule that is clear of its thresholds, it stands whatever the others do.
                rules.All(r => r.IsBorderline));
        }
    }

    private static List<RuleAt> Givers(Examination examination, int index, TopicEntry entry, int value) =>
    [
        .. entry.Givers.Where(g => g.Value == value).Select(g => new RuleAt(examination, index, g.Rule))
            .Where(r => r.State.Standing == Standing.Stands).DistinctBy(r => r.Position),
    ];
}
