using System.Collections.Immutable;
using FindingRules.Model.Readings;

namespace FindingRules.Output;

/// <summary>What a line of a reading rests on, in words.</summary>
internal static class Grounds
{
    public static string Rules(ImmutableArray<RuleReference> rules) => string.Join(", ", rules.Select(r => r.Id));

    public static string By(ImmutableArray<RuleReference> rules, ImmutableArray<string> subjects) => subjects.IsEmpty
        ? $"by {Rules(rules)}"
        : $"by {Rules(rules)}, for {string.Join(" and ", subjects)}";

    /// <summary>The findings, those of another subject than <paramref name="subject"/> with its name before them.</summary>
    public static string? RestsOn(ImmutableArray<Evidence> evidence, string? subject)
    {
        if (evidence.IsEmpty) return null;
        var groups = evidence.GroupBy(e => e.Subject, StringComparer.Ordinal).Select(group =>
            (group.Key == subject ? "" : $"{group.Key}: ")
            + string.Join(", ", group.Select(Finding).Distinct(StringComparer.Ordinal)));
        return $"rests on {string.Join("; ", groups)}";
    }

    public static string Measured(BorderlineRule rule) =>
        $"{rule.Subject}: {string.Join("; ", rule.Measures.Select(m => Distance(m, rule.Subject)))}";

    private static string Distance(Evidence measure, string subject)
    {
        var name = measure.Subject == subject ? measure.Finding : $"{measure.Subject} {measure.Finding}";
        var from = measure.Threshold is { } threshold ? $" from {threshold}" : "";
        var far = measure.Distance is { } distance ? $", {distance}{from}" : "";
        return $"{name} is {measure.Value}{far}";
    }

    public static IEnumerable<string> Sources(ImmutableArray<SourceNote> sources) =>
        sources.Select(s => $"source: {s.Cites} ({s.Status})");

    public static string? Choices(ImmutableArray<string> choices) =>
        choices.IsEmpty ? null : $"choice of the pack: {string.Join(" ", choices)}";

    public static string Missing(ImmutableArray<MissingKey> missing, string subject) => string.Join(
        ", ", missing.Select(m => m.Subject == subject ? m.Finding : $"{m.Subject} {m.Finding}"));

    private static string Finding(Evidence evidence) =>
        $"{evidence.Finding} {evidence.Value}{(evidence.IsFromNormal ? " (sent as normal)" : "")}";
}
