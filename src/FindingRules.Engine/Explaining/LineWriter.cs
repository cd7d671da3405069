using System.Collections.Immutable;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Explanations;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Explaining;

/// <summary>The lines of a reading with the rules behind each, found again in the examination that it was written from.</summary>
internal sealed class LineWriter(Decided decided, Reading reading)
{
    private readonly ILookup<(string, string), RuleAt> _rules =
        decided.Rules.ToLookup(r => (r.Rule.Id, r.Instance.Subject.Key));

    public IEnumerable<(ExplainedLine Line, ImmutableArray<RuleAt> By)> Write()
    {
        foreach (var s in reading.Suggestions)
            yield return Line("suggestion", s.Topic, s.Text, [s.Subject], Find(s.Rules, [s.Subject]));
        foreach (var s in reading.NextSteps)
        {
            var rules = Find(s.Rules, s.Subjects).Where(EmitsStep);
            yield return Line(s.IsDone ? "done-step" : "next-step", s.Step, s.Text, s.Subjects, [.. rules]);
        }
        foreach (var c in reading.Cautions)
            yield return Line("caution", c.Caution, c.Text, c.Subjects, [.. Find(c.Rules, c.Subjects).Where(r => Warns(r, c.Caution))]);
        foreach (var p in reading.Probabilities)
            yield return Line("probability", p.Of, p.Text, [p.Subject], Find(p.Rules, [p.Subject]));
        foreach (var h in reading.Held)
            yield return Line("held", h.Topic, $"{TopicAt(h.Topic, h.Subject)} is withheld", [h.Subject], Find(h.Rules, [h.Subject]));
        foreach (var c in reading.Conflicts)
            yield return Line(
                "conflict", c.Topic, $"{TopicAt(c.Topic, c.Subject)} is contradictory", [c.Subject],
                Find([.. c.Values.SelectMany(v => v.Rules)], [c.Subject]));
    }

    private static (ExplainedLine, ImmutableArray<RuleAt>) Line(
        string sort, string name, string text, ImmutableArray<string> subjects, ImmutableArray<RuleAt> by) =>
        (new ExplainedLine(sort, name, text, subjects, [.. by.Select(ProofWriter.KeyOf)]), by);

    private ImmutableArray<RuleAt> Find(ImmutableArray<RuleReference> rules, ImmutableArray<string> subjects) =>
        [.. rules.SelectMany(r => subjects.SelectMany(s => _rules[(r.Id, s)])).Distinct()];

    private static bool EmitsStep(RuleAt rule) =>
        rule.State.Standing == Standing.Stands && rule.IsPublished
        && rule.Rule.Conclusions.Any(c => c is EvaluateConclusion or NextStepConclusion);

    private static bool Warns(RuleAt rule, string caution) =>
        rule.State.Truth == Truth.True && rule.Rule.Conclusions.OfType<CautionConclusion>().Any(c => c.Caution.Name == caution);

    private string TopicAt(string topic, string subject)
    {
        var title = decided.Instances.Select(i => decided.Examination[i].Subject).First(s => s.Key == subject).Title;
        return $"{Capital(decided.Examination.Network.Pack.Symbols.Topics[topic].Title)} of the {title}";
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
