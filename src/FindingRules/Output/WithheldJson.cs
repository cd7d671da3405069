using System.Text.Json;
using FindingRules.Model.Readings;

namespace FindingRules.Output;

/// <summary>What a reading does not say, and why: held, conflicting, unknown, borderline, missing.</summary>
internal static class WithheldJson
{
    public static void Write(Utf8JsonWriter to, WithheldTopic held)
    {
        to.WriteStartObject();
        to.WriteString("topic"u8, held.Topic);
        to.WriteString("subject"u8, held.Subject);
        to.WriteStrings("wouldBe"u8, held.WouldBe);
        to.WriteStrings("because"u8, held.Because);
        SuggestionJson.WriteGrounds(to, held.Rules, held.RestsOn);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, ConflictingTopic conflict)
    {
        to.WriteStartObject();
        to.WriteString("topic"u8, conflict.Topic);
        to.WriteString("subject"u8, conflict.Subject);
        to.WriteList("values"u8, conflict.Values, Write);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, UndecidedRule undecided)
    {
        to.WriteStartObject();
        to.WritePropertyName("rule"u8);
        SuggestionJson.WriteRule(to, undecided.Rule);
        to.WriteString("subject"u8, undecided.Subject);
        to.WriteString("wouldConclude"u8, undecided.WouldConclude);
        to.WriteList("missing"u8, undecided.Missing, Write);
        to.WriteStrings("waitsFor"u8, undecided.WaitsFor);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, BorderlineRule borderline)
    {
        to.WriteStartObject();
        to.WritePropertyName("rule"u8);
        SuggestionJson.WriteRule(to, borderline.Rule);
        to.WriteString("subject"u8, borderline.Subject);
        to.WriteBoolean("applies"u8, borderline.Applies);
        to.WriteString("wouldConclude"u8, borderline.WouldConclude);
        to.WriteList("measures"u8, borderline.Measures, SuggestionJson.Write);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, MissingFinding missing)
    {
        to.WriteStartObject();
        to.WriteString("subject"u8, missing.Subject);
        to.WriteString("finding"u8, missing.Finding);
        to.WriteString("text"u8, missing.Text);
        to.WriteStrings("settles"u8, missing.Settles);
        to.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter to, NotAssessed missing)
    {
        to.WriteStartObject();
        to.WriteString("protocol"u8, missing.Protocol);
        to.WriteString("subject"u8, missing.Subject);
        to.WriteStrings("findings"u8, missing.Findings);
        to.WriteBoolean("isNotAssessable"u8, missing.IsNotAssessable);
        to.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter to, MissingKey key)
    {
        to.WriteStartObject();
        to.WriteString("subject"u8, key.Subject);
        to.WriteString("finding"u8, key.Finding);
        to.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter to, ConflictingValue value)
    {
        to.WriteStartObject();
        to.WriteString("value"u8, value.Value);
        SuggestionJson.WriteGrounds(to, value.Rules, value.RestsOn);
        to.WriteEndObject();
    }
}
