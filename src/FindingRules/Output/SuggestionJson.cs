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
        to.WriteString("text", suggestion.Text);
        to.WriteString("topic", suggestion.Topic);
        to.WriteString("value", suggestion.Value);
        to.WriteString("certainty", suggestion.Certainty);
        to.WriteString("subject", suggestion.Subject);
        if (suggestion.Code is { } code) WriteCode(to, code);
        WriteGrounds(to, suggestion.Rules, suggestion.RestsOn);
        to.WriteList("sources", suggestion.Sources, WriteSource);
        to.WriteStrings("choices", suggestion.Choices);
        to.WriteBoolean("isBorderline", suggestion.IsBorderline);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, SuggestedStep step)
    {
        to.WriteStartObject();
        to.WriteString("step", step.Step);
        to.WriteString("text", step.Text);
        to.WriteString("urgency", step.Urgency);
        to.WriteBoolean("isDone", step.IsDone);
        to.WriteStrings("found", step.Found);
        to.WriteStrings("subjects", step.Subjects);
        WriteGrounds(to, step.Rules, step.RestsOn);
        to.WriteList("sources", step.Sources, WriteSource);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, CautionNote caution)
    {
        to.WriteStartObject();
        to.WriteString("caution", caution.Caution);
        to.WriteString("text", caution.Text);
        to.WriteStrings("subjects", caution.Subjects);
        WriteGrounds(to, caution.Rules, caution.RestsOn);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, ProbabilityNote probability)
    {
        to.WriteStartObject();
        to.WriteString("text", probability.Text);
        to.WriteString("subject", probability.Subject);
        to.WriteString("of", probability.Of);
        to.WriteString("finding", probability.Finding);
        to.WriteString("before", probability.Before);
        to.WriteString("after", probability.After);
        to.WriteString("afterExact", probability.AfterExact);
        to.WriteOptional("range", probability.Range);
        to.WriteString("figures", probability.Figures);
        WriteGrounds(to, probability.Rules, probability.RestsOn);
        to.WriteList("sources", probability.Sources, WriteSource);
        to.WriteEndObject();
    }

    public static void WriteGrounds(Utf8JsonWriter to, IEnumerable<RuleReference> rules, IEnumerable<Evidence> restsOn)
    {
        to.WriteList("rules", rules, WriteRule);
        to.WriteList("restsOn", restsOn, Write);
    }

    public static void WriteRule(Utf8JsonWriter to, RuleReference rule)
    {
        to.WriteStartObject();
        to.WriteString("id", rule.Id);
        to.WriteString("revision", rule.Revision);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, Evidence evidence)
    {
        to.WriteStartObject();
        to.WriteString("subject", evidence.Subject);
        to.WriteString("finding", evidence.Finding);
        to.WriteString("value", evidence.Value);
        to.WriteString("statement", evidence.Statement);
        to.WriteOptional("threshold", evidence.Threshold);
        to.WriteOptional("distance", evidence.Distance);
        to.WriteBoolean("isFromNormal", evidence.IsFromNormal);
        to.WriteEndObject();
    }

    private static void WriteSource(Utf8JsonWriter to, SourceNote source)
    {
        to.WriteStartObject();
        to.WriteStrings("facts", source.Facts);
        to.WriteString("cites", source.Cites);
        to.WriteString("status", source.Status);
        to.WriteOptional("choice", source.Choice);
        to.WriteEndObject();
    }

    private static void WriteCode(Utf8JsonWriter to, Code code)
    {
        to.WriteStartObject("code");
        to.WriteString("system", code.System);
        to.WriteString("value", code.Value);
        to.WriteOptional("version", code.Version);
        to.WriteEndObject();
    }
}
