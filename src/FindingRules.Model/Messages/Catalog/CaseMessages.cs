using FindingRules.Model.Packs;
using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Catalog;

/// <summary>FR4xxx: cases that do not come out as they say, and what a review finds about the pack as a whole.</summary>
public static class CaseMessages
{
    /// <param name="should">Such as <c>fire</c>, <c>yield</c>.</param>
    /// <param name="came">Such as <c>it is unknown of right supraspinatus</c>.</param>
    public static Message RuleCameOtherwise(Case @case, Expected rule, string should, string came) =>
        new(4001, Severity.Error, rule.Location, $"{Name(@case)} expects `{rule.Text}` to {should}; {came}");

    /// <param name="list">The word of the cases file: <c>concludes</c>, <c>next</c>.</param>
    public static Message DidNotCome(Case @case, string list, Expected expected, IReadOnlyCollection<string> came) =>
        new(4002, Severity.Error, expected.Location, $"{Name(@case)} expects `{expected.Text}` under `{list}`, which did not come")
        {
            Label = came.Count == 0 ? "nothing of the sort came" : $"what came: {Few(came)}",
        };

    public static Message CameUnexpected(Case @case, Location at, string list, string came, IReadOnlyCollection<string> rules) =>
        new(4003, Severity.Error, at, $"{Name(@case)} came out with `{came}`, which is not under its `{list}`")
        {
            Label = rules.Count == 0 ? null : $"it comes from {Few(rules)}",
        };

    public static Message ImpressionDiffers(Case @case, int line, string? expected, string? came) =>
        new(4004, Severity.Error, @case.DeclaredAt, (expected, came) switch
        {
            (null, _) => $"{Name(@case)} expects an impression of {line - 1} lines; line {line} came as well: `{came}`",
            (_, null) => $"{Name(@case)} expects `{expected}` as line {line} of the impression, which ends before it",
            _ => $"{Name(@case)} expects `{expected}` as line {line} of the impression; what came is `{came}`",
        });

    public static Message RuleWithoutCase(Rule rule) =>
        new(4010, Severity.Doubt, rule.DeclaredAt, $"no case makes `{rule.Id}` true")
        {
            Label = "add a case whose findings make it true",
        };

    public static Message NoCases(Location manifest) =>
        new(4011, Severity.Doubt, manifest, "the pack has no cases, so nothing shows that its rules do what was meant")
        {
            Label = "add a file of cases",
        };

    private const int FewEnough = 4;

    private static string Name(Case @case) => $"`{@case.Id}`";

    private static string Few(IReadOnlyCollection<string> names) =>
        string.Join(", ", names.Take(FewEnough).Select(n => $"`{n}`"))
        + (names.Count > FewEnough ? $" and {names.Count - FewEnough} more" : "");
}
