using System.Text.Json;
using FindingRules.Model.Readings;

namespace FindingRules.Output;

/// <summary>What a reading does not say, and why: held, conflicting, unknown, borderline, missing.</summary>
internal static class WithheldJson
{
    public static void Write(Utf8JsonWriter to, WithheldTopic held)
    {
        to.WriteStartObject();
        to.WriteString("topic", held.Topic);
        to.WriteString("subject", held.Subject);
        to.WriteStrings("wouldBe", held.WouldBe);
        to.WriteStrings("because", held.Because);
        SuggestionJson.WriteGrounds(to, held.Rules, held.RestsOn);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, ConflictingTopic conflict)
    {
        to.WriteStartObject();
        to.WriteString("topic", conflict.Topic);
        to.WriteString("subject", conflict.Subject);
        to.WriteList("values", conflict.Values, Write);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, UndecidedRule undecided)
    {
        to.WriteStartObject();
        to.WritePropertyName("rule");
        SuggestionJson.WriteRule(to, undecided.Rule);
        to.WriteString("subject", undecided.Subject);
        to.WriteString("wouldConclude", undecided.WouldConclude);
        to.WriteList("missing", undecided.Missing, Write);
        to.WriteStrings("waitsFor", undecided.WaitsFor);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, BorderlineRule borderline)
    {
        to.WriteStartObject();
        to.WritePropertyName("rule");
        SuggestionJson.WriteRule(to, borderline.Rule);
        to.WriteString("subject", borderline.Subject);
        to.WriteBoolean("applies", borderline.Applies);
        to.WriteString("wouldConclude", borderline.WouldConclude);
        to.WriteList("measures", borderline.Measures, SuggestionJson.Write);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, MissingFinding missing)
    {
        to.WriteStartObject();
        to.WriteString("subject", missing.Subject);
        to.WriteString("finding", missing.Finding);
        to.WriteString("text", missing.Text);
        to.WriteStrings("settles", missing.Settles);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, NotAssessed missing)
    {
        to.WriteStartObject();
        to.WriteString("protocol", missing.Protocol);
        to.WriteString("subject", missing.Subject);
        to.WriteStrings("findings", missing.Findings);
        to.WriteBoolean("isNotAssessable", missing.IsNotAssessable);
        to.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter to, MissingKey key)
    {
        to.WriteStartObject();
        to.WriteString("subject", key.Subject);
        to.WriteString("finding", key.Finding);
        to.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter to, ConflictingValue value)
    {
        to.WriteStartObject();
        to.WriteString("value", value.Value);
        SuggestionJson.WriteGrounds(to, value.Rules, value.RestsOn);
        to.WriteEndObject();
    }
}
