using System.Security.Cryptography;
using System.Text;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;

namespace FindingRules.Packs.Digests;

/// <summary>
/// SHA-256 of everything that may change an answer, in an order of its own: not layout, comments or the order of files
/// and keys; not cases, owners, review dates, the version or who approved it.
/// </summary>
internal static class MeaningDigest
{
    public static string Of(Pack pack)
    {
        var text = new CanonicalText().Add("pack", pack.Name, $"{pack.Language}", pack.Caution);
        VocabularyDigest.Add(text, pack.Vocabulary);
        AddTopics(text, pack.Symbols);
        AddSteps(text, pack.Symbols);
        AddMeasures(text, pack.Symbols);
        foreach (var reference in pack.References.Values)
            text.Add("reference", reference.Name, $"{reference.Status}", reference.Cites, reference.Read, reference.Choice,
                reference.Accuracy?.ToString())
                .Add("facts", reference.Facts.Order(StringComparer.Ordinal));
        foreach (var rule in pack.Rules)
            text.Add("rule", rule.Id, rule.Revision, rule.Because, rule.Choice).Add("sources", Names(rule.Sources));
        foreach (var protocol in pack.Protocols.Values) AddProtocol(text, protocol);
        foreach (var withdrawal in pack.Withdrawn.OrderBy(w => w.Rule, StringComparer.Ordinal))
            text.Add("withdrawn", withdrawal.Rule, withdrawal.Because);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }

    private static void AddTopics(CanonicalText text, Symbols symbols)
    {
        foreach (var topic in symbols.Topics.Values)
        {
            text.Add("topic", topic.Name, topic.Title, RuleRevision.ScopeText(topic.Scope), $"{topic.IsPerStructure}",
                $"{topic.AnswersEvery}");
            foreach (var value in topic.Values.OrderBy(v => v.Name, StringComparer.Ordinal))
                text.Add("value", value.Name, value.Title, value.Says?.Written, $"{value.Certainty}",
                    value.Code?.System, value.Code?.Value, value.Code?.Version);
        }
    }

    private static void AddSteps(CanonicalText text, Symbols symbols)
    {
        foreach (var step in symbols.NextSteps.Values)
            text.Add("next-step", step.Name, step.Says.Written, $"{step.Urgency}", Canonical(step.Done))
                .Add("sources", Names(step.Sources));
        foreach (var step in symbols.EvaluateSteps.Values)
            text.Add("evaluate", step.Structure.Name, step.Says.Written, $"{step.Urgency}")
                .Add("completed-by", step.CompletedBy.Select(f => f.Name).Order(StringComparer.Ordinal));
        foreach (var caution in symbols.Cautions.Values)
            text.Add("caution", caution.Name, caution.Says.Written).Add("sources", Names(caution.Sources));
    }

    private static void AddMeasures(CanonicalText text, Symbols symbols)
    {
        foreach (var measure in symbols.DerivedMeasures.Values)
        {
            text.Add("measure", measure.Name, measure.Title, RuleRevision.ScopeText(measure.Scope), measure.Unit.Name,
                ConditionText.Canonical(measure.Is));
            if (measure.ShownTo is { } step) text.Add("shown to", step.InBase.ToString());
        }
        foreach (var scale in symbols.Scales.Values)
        {
            text.Add("scale", scale.Name, scale.Title, scale.Choice, ConditionText.Canonical(scale.Of), Canonical(scale.When));
            foreach (var band in scale.Bands) text.Add("band", band.Value, Show(band.Range));
        }
    }

    private static void AddProtocol(CanonicalText text, Protocol protocol)
    {
        text.Add("protocol", protocol.Name, protocol.Title, protocol.Calm.Written).Add("sources", Names(protocol.Sources));
        // Their order is the order of scanning, and so of the answer.
        foreach (var item in protocol.Required) text.Add("required", Names(item));
        foreach (var item in protocol.AsIndicated) text.Add("as-indicated", Names(item));
        if (!protocol.Facts.IsEmpty) text.Add("required-facts", protocol.Facts.Select(f => f.Name));
    }

    public static string Show(Interval? interval) => interval is not { } range
        ? "-"
        : $"{(range.LowClosed ? '[' : '(')}{range.Low},{range.High}{(range.HighClosed ? ']' : ')')}";

    private static string? Canonical(Condition? condition) => condition is null ? null : ConditionText.Canonical(condition);

    private static IEnumerable<string> Names(ProtocolItem item) => item.Findings.Select(f => f.Name).Prepend(item.Structure.Name);

    private static IEnumerable<string> Names(IEnumerable<Reference> references) =>
        references.Select(r => r.Name).Order(StringComparer.Ordinal);
}
