using System.Collections.Immutable;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Reporting;

/// <summary>Cautions of every rule whose condition is true: they stay where the rule yields or is held.</summary>
internal static class CautionWriter
{
    public static ImmutableArray<CautionNote> Write(Decided decided)
    {
        var filler = new WordingFiller(decided.Examination);
        var notes =
            from rule in decided.Rules
            where rule.State.Truth == Truth.True
            from conclusion in rule.Rule.Conclusions.OfType<CautionConclusion>()
            select (conclusion.Caution, Text: filler.Fill(conclusion.Caution.Says, rule.Index), rule);
        return
        [
            .. notes.GroupBy(n => (n.Caution.Name, n.Text)).Select(group => new CautionNote(
                group.Key.Name, group.Key.Text,
                [.. group.Select(n => n.rule.Instance.Subject.Key).Distinct()],
                [.. group.Select(n => n.rule.Reference).Distinct().OrderBy(r => r.Id, StringComparer.Ordinal)],
                EvidenceWriter.Of(group.Select(n => n.rule)))),
        ];
    }
}
