using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Explaining.Changing;

/// <summary>What a reading says, line by line, for comparing two.</summary>
internal static class SaidLines
{
    public static ImmutableArray<string> Of(RuleNetwork network, Reading reading)
    {
        string At(string topic, string subject) => $"{network.Pack.Symbols.Topics[topic].Title} of the {TitleOf(network, subject)}";
        return
        [
            .. reading.Suggestions.Select(s => s.Text),
            .. reading.NextSteps.Select(s => s.IsDone ? $"Done: {s.Text}" : $"Next: {s.Text}"),
            .. reading.Cautions.Select(c => $"Caution: {c.Text}"),
            .. reading.Probabilities.Select(p => p.Text),
            .. reading.Held.Select(h => $"Withheld: {At(h.Topic, h.Subject)}."),
            .. reading.Conflicts.Select(c => $"Contradictory: {At(c.Topic, c.Subject)}."),
        ];
    }

    /// <summary>A subject is named by its key in a reading: side, structure and lesion.</summary>
    private static string TitleOf(RuleNetwork network, string key)
    {
        if (key == Subject.Study.Key) return Subject.Study.Title;
        var (whole, lesion) = key.Split(" lesion ") is [var first, var id] ? (first, id) : (key, null);
        var words = whole.Split(' ');
        var side = words.Length == 1 ? Side.None : Enum.GetValues<Side>().First(s => s.Word() == words[0]);
        var structure = network.Pack.Vocabulary.Structures[words[^1]];
        return new Subject(structure, side, lesion).Title;
    }
}
