using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR8xxx: questions about a reading that cannot be answered as they were asked.</summary>
public static class ExplanationMessages
{
    /// <summary>Codes up to this one say that something named was not found; the others that the question is none.</summary>
    public const int LastOfNotFound = 8004;

    private const int FewNear = 3;

    public static Message UnknownRule(Location at, string found, string pack, IReadOnlyCollection<string> rules)
    {
        var near = EquallyNear(found, rules);
        return new Message(8001, Severity.Error, at, $"the pack `{pack}` has no rule `{found}`")
        {
            Label = near.Length switch
            {
                0 => Spelling.Help(found, rules) ?? "the files of the pack list its rules",
                <= FewNear => $"did you mean {Spelling.List(near)}?",
                _ => $"such as {Spelling.List(near.Take(FewNear))}, and {near.Length - FewNear} more that are as near",
            },
            Fix = near is [var only] ? new Fix($"ask about `{only}`", at, only) : null,
        };
    }

    public static Message RuleWithdrawn(Location at, string rule, DateOnly on, string because) =>
        new(8002, Severity.Error, at, $"`{rule}` was withdrawn on {on:yyyy-MM-dd} and takes no part in readings")
        {
            Label = $"the pack says: {OneLine(because)}",
        };

    /// <param name="subjects">Those of the study that the rule is for.</param>
    /// <param name="isInStudy">It is there, and the rule is not for it.</param>
    /// <param name="isInPack">A study could have it, and this one has not.</param>
    public static Message NoSuchSubject(
        Location at, string found, string rule, string scope, IReadOnlyCollection<string> subjects, bool isInStudy, bool isInPack) =>
        new(8003, Severity.Error, at, isInStudy ? $"`{rule}` is for {scope}, and `{found}` is none"
            : isInPack ? $"the study has no `{found}`"
            : $"`{found}` is no subject that the pack knows, expected a side and a structure, such as `right supraspinatus`, or `study`")
        {
            Label = subjects.Count == 0
                ? "the study has nothing that the rule is for"
                : Spelling.Help(found, subjects) ?? $"the study has {Spelling.List(subjects.Take(6), "and")}",
            Fix = Spelling.Closest(found, subjects) is { } closest ? new Fix($"ask about `{closest}`", at, closest) : null,
        };

    public static Message NothingForRule(Location at, string rule, string scope) =>
        new(8004, Severity.Error, at, $"`{rule}` is for {scope}, and the study has nothing of that sort")
        {
            Label = "a rule is worked out for what was sent, and for what a protocol of the study requires",
        };

    public static Message RuleNotSaid(Location at) =>
        new(8005, Severity.Error, at, "the question names no rule, expected the id of one such as `CUFF-010`");

    public static Message NothingAskedOfRule(Location at, string found) =>
        new(8006, Severity.Error, at, $"`{found}` was named, but nothing is asked of a single rule")
        {
            Label = "ask why or why not, or leave it out",
        };

    public static Message TwoQuestions(Location at) =>
        new(8007, Severity.Error, at, "two questions are asked at once, expected one")
        {
            Label = "ask them one after the other",
        };

    public static Message UnknownQuestion(Location at, string found, IReadOnlyCollection<string> known) =>
        new(8008, Severity.Error, at, $"`{found}` is not a question, expected {Spelling.List(known)}")
        {
            Label = Spelling.Help(found, known),
            Fix = Spelling.Closest(found, known) is { } closest ? new Fix($"ask `{closest}`", at, closest) : null,
        };

    /// <summary>Ids are short: where several are as near as the nearest, one alone would be a guess.</summary>
    private static string[] EquallyNear(string found, IReadOnlyCollection<string> names)
    {
        if (Spelling.Closest(found, names) is not { } closest) return [];
        if (string.Equals(closest, found, StringComparison.OrdinalIgnoreCase)) return [closest];
        var distance = Spelling.Distance(found, closest);
        string[] near = [.. names.Where(n => Spelling.Distance(found, n) == distance).Order(StringComparer.Ordinal)];
        return near.Where(n => n.StartsWith(found, StringComparison.OrdinalIgnoreCase)).ToArray() is { Length: > 0 } longer ? longer : near;
    }

    private static string OneLine(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).TrimEnd('.');
}
