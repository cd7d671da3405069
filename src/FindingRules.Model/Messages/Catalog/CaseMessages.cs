using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR4xxx: cases that do not come out as they say, and what a review finds about the pack as a whole.</summary>
public static class CaseMessages
{
    private const int FewEnough = 4;

    /// <param name="should">Such as <c>fire</c>, <c>yield</c>.</param>
    /// <param name="came">Such as <c>it is unknown of right supraspinatus</c>.</param>
    public static Message RuleCameOtherwise(Location at, string caseId, string rule, string should, string came) =>
        new(4001, Severity.Error, at, $"`{caseId}` expects `{rule}` to {should}; {came}");

    /// <param name="list">The word of the cases file: <c>concludes</c>, <c>next</c>.</param>
    public static Message DidNotCome(Location at, string caseId, string list, string expected, IReadOnlyCollection<string> came) =>
        new(4002, Severity.Error, at, $"`{caseId}` expects `{expected}` under `{list}`, which did not come")
        {
            Label = came.Count == 0 ? "nothing of the sort came" : $"what came: {Few(came)}",
        };

    /// <param name="rules">Ids of the rules behind it.</param>
    public static Message CameUnexpected(Location at, string caseId, string list, string came, IReadOnlyCollection<string> rules) =>
        new(4003, Severity.Error, at, $"`{caseId}` came out with `{came}`, which is not under its `{list}`")
        {
            Label = rules.Count == 0 ? null : $"it comes from {Few(rules)}",
        };

    /// <param name="line">The first line of the impression that differs, counted from 1.</param>
    public static Message ImpressionDiffers(Location at, string caseId, int line, string? expected, string? came) =>
        new(4004, Severity.Error, at, $"`{caseId}` has another impression than it expects from line {line} on")
        {
            Label = (expected, came) switch
            {
                (null, _) => $"what came as well: `{came}`",
                (_, null) => $"what did not come: `{expected}`",
                _ => $"expected is `{expected}`, what came is `{came}`",
            },
        };

    public static Message RuleWithoutCase(Location at, string rule) =>
        new(4010, Severity.Doubt, at, $"no case makes `{rule}` true")
        {
            Label = "add a case whose findings make it true",
        };

    public static Message NoCases(Location manifest) =>
        new(4011, Severity.Doubt, manifest, "the pack has no cases, so nothing shows that its rules do what was meant")
        {
            Label = "add a file of cases",
        };

    private static string Few(IReadOnlyCollection<string> names) =>
        string.Join(", ", names.Take(FewEnough).Select(n => $"`{n}`"))
        + (names.Count > FewEnough ? $" and {names.Count - FewEnough} more" : "");
}
