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
        var notes = new List<(string Name, string Text, List<RuleAt> Rules)>();
        foreach (var rule in decided.Live)
        {
            if (rule.State.Truth != Truth.True) continue;
            foreach (var conclusion in rule.Rule.Conclusions)
                if (conclusion is CautionConclusion { Caution: var caution })
                    RulesOf(notes, caution.Name, decided.Filler.Fill(caution.Says, rule.Index)).Add(rule);
        }
        var written = ImmutableArray.CreateBuilder<CautionNote>(notes.Count);
        foreach (var (name, text, rules) in notes)
            written.Add(new CautionNote(name, text, Grounds.Subjects(rules), Grounds.References(rules), decided.EvidenceOf(rules)));
        return written.MoveToImmutable();
    }

    private static List<RuleAt> RulesOf(List<(string Name, string Text, List<RuleAt> Rules)> notes, string name, string text)
    {
        foreach (var note in notes)
            if (note.Name == name && note.Text == text)
                return note.Rules;
        notes.Add((name, text, []));
        return notes[^1].Rules;
    }
}
