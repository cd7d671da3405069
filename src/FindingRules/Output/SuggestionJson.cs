using System.Collections.Immutable;
using System.Text.Json;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;

namespace FindingRules.Output;

/// <summary>What a reading suggests: impressions, next steps, cautions, each with what it rests on.</summary>
internal static class SuggestionJson
{
    public static void Write(Utf8JsonWriter to, Suggestion suggestion)
    {
        to.WriteStartObject();
        to.WriteString("text"u8, suggestion.Text);
        to.WriteString("topic"u8, suggestion.Topic);
        to.WriteString("value"u8, suggestion.Value);
        to.WriteString("certainty"u8, suggestion.Certainty);
        to.WriteString("subject"u8, suggestion.Subject);
        if (suggestion.Code is { } code) WriteCode(to, code);
        WriteGrounds(to, suggestion.Rules, suggestion.RestsOn);
        to.WriteList("sources"u8, suggestion.Sources, WriteSource);
        to.WriteStrings("choices"u8, suggestion.Choices);
        to.WriteBoolean("isBorderline"u8, suggestion.IsBorderline);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, SuggestedStep step)
    {
        to.WriteStartObject();
        to.WriteString("step"u8, step.Step);
        to.WriteString("text"u8, step.Text);
        to.WriteString("urgency"u8, step.Urgency);
        to.WriteBoolean("isDone"u8, step.IsDone);
        to.WriteStrings("found"u8, step.Found);
        to.WriteStrings("subjects"u8, step.Subjects);
        WriteGrounds(to, step.Rules, step.RestsOn);
        to.WriteList("sources"u8, step.Sources, WriteSource);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, CautionNote caution)
    {
        to.WriteStartObject();
        to.WriteString("caution"u8, caution.Caution);
        to.WriteString("text"u8, caution.Text);
        to.WriteStrings("subjects"u8, caution.Subjects);
        WriteGrounds(to, caution.Rules, caution.RestsOn);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, ProbabilityNote probability)
    {
        to.WriteStartObject();
        to.WriteString("text"u8, probability.Text);
        to.WriteString("subject"u8, probability.Subject);
        to.WriteString("of"u8, probability.Of);
        to.WriteString("finding"u8, probability.Finding);
        to.WriteString("before"u8, probability.Before);
        to.WriteString("after"u8, probability.After);
        to.WriteString("afterExact"u8, probability.AfterExact);
        to.WriteOptional("range"u8, probability.Range);
        to.WriteString("figures"u8, probability.Figures);
        WriteGrounds(to, probability.Rules, probability.RestsOn);
        to.WriteList("sources"u8, probability.Sources, WriteSource);
        to.WriteEndObject();
    }

    public static void WriteGrounds(Utf8JsonWriter to, ImmutableArray<RuleReference> rules, ImmutableArray<Evidence> restsOn)
    {
        to.WriteList("rules"u8, rules, WriteRule);
        to.WriteList("restsOn"u8, restsOn, Write);
    }

    public static void WriteRule(Utf8JsonWriter to, RuleReference rule)
    {
        to.WriteStartObject();
        to.WriteString("id"u8, rule.Id);
        to.WriteString("revision"u8, rule.Revision);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, Evidence evidence)
    {
        to.WriteStartObject();
        to.WriteString("subject"u8, evidence.Subject);
        to.WriteString("finding"u8, evidence.Finding);
        to.WriteString("value"u8, evidence.Value);
        to.WriteString("statement"u8, evidence.Statement);
        to.WriteOptional("threshold"u8, evidence.Threshold);
        to.WriteOptional("distance"u8, evidence.Distance);
        to.WriteBoolean("isFromNormal"u8, evidence.IsFromNormal);
        to.WriteEndObject();
    }

    private static void WriteSource(Utf8JsonWriter to, SourceNote source)
    {
        to.WriteStartObject();
        to.WriteStrings("facts"u8, source.Facts);
        to.WriteString("cites"u8, source.Cites);
        to.WriteString("status"u8, source.Status);
        to.WriteOptional("choice"u8, source.Choice);
        to.WriteEndObject();
    }

    private static void WriteCode(Utf8JsonWriter to, Code code)
    {
        to.WriteStartObject("code"u8);
        to.WriteString("system"u8, code.System);
        to.WriteString("value"u8, code.Value);
        to.WriteOptional("version"u8, code.Version);
        to.WriteEndObject();
    }
}
