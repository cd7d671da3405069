using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR8xxx: questions about a reading that cannot be answered as they were asked.</summary>
public static class ExplanationMessages
{
    /// <summary>Codes up to this one say that something named was not found; the others that the question is none.</summary>
    public const int LastOfNotFound = 8004;

    public static Message UnknownRule(Location at, string found, string pack, IReadOnlyCollection<string> rules) =>
        new(8001, Severity.Error, at, $"the pack `{pack}` has no rule `{found}`")
        {
            Label = Spelling.Help(found, rules) ?? "the files of the pack list its rules",
            Fix = Spelling.Closest(found, rules) is { } closest ? new Fix($"ask about `{closest}`", at, closest) : null,
        };

    public static Message RuleWithdrawn(Location at, string rule, DateOnly on, string because) =>
        new(8002, Severity.Error, at, $"`{rule}` was withdrawn on {on:yyyy-MM-dd} and takes no part in readings")
        {
            Label = $"the pack says: {OneLine(because)}",
        };

    /// <param name="subjects">Those of the study that the rule is for.</param>
    public static Message NoSuchSubject(Location at, string found, string rule, string scope, IReadOnlyCollection<string> subjects) =>
        new(8003, Severity.Error, at, $"`{rule}` is for {scope}, and the study has no `{found}` of that sort")
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

    private static string OneLine(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).TrimEnd('.');
}
