using System.Collections.Immutable;
using System.Text.Json;

namespace FindingRules.Service.Feedback;

/// <summary>What the suggestions of a recorded reading are called, and the rules that each came from.</summary>
internal static class SuggestionNames
{
    public static string OfTopic(string topic, string subject) => $"{topic} of {subject}";

    public static string OfStep(string step) => $"step {step}";

    public static string OfCaution(string caution) => $"caution {caution}";

    /// <summary>A step or caution that stands in several lines is one suggestion.</summary>
    public static ImmutableSortedDictionary<string, ImmutableArray<string>> In(ReadOnlyMemory<byte> reading)
    {
        using var document = JsonDocument.Parse(reading);
        var root = document.RootElement;
        return Lines(root, "suggestions", s => OfTopic(Text(s, "topic"), Text(s, "subject")))
            .Concat(Lines(root, "nextSteps", s => OfStep(Text(s, "step"))))
            .Concat(Lines(root, "cautions", c => OfCaution(Text(c, "caution"))))
            .GroupBy(l => l.Name, StringComparer.Ordinal)
            .ToImmutableSortedDictionary(
                g => g.Key,
                g => g.SelectMany(l => l.Rules).Distinct().Order(StringComparer.Ordinal).ToImmutableArray(),
                StringComparer.Ordinal);
    }

    private static IEnumerable<(string Name, string[] Rules)> Lines(JsonElement reading, string list, Func<JsonElement, string> name) =>
        reading.GetProperty(list).EnumerateArray()
            .Select(l => (name(l), l.GetProperty("rules").EnumerateArray().Select(r => Text(r, "id")).ToArray()));

    private static string Text(JsonElement of, string member) => of.GetProperty(member).GetString()!;
}
