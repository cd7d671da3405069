using System.Collections.Immutable;
using System.Text.Json;
using FindingRules.Ledger.Canonical;

namespace FindingRules.Ledger.Feedback;

/// <summary>Feedback as the content of a record.</summary>
internal static class FeedbackJson
{
    public static byte[] Write(ImmutableArray<SuggestionFeedback> suggestions)
    {
        var to = new CanonicalBuffer();
        to.Ascii("{\"suggestions\":");
        var separator = (byte)'[';
        foreach (var suggestion in suggestions)
        {
            to.Raw(separator);
            Write(to, suggestion);
            separator = (byte)',';
        }
        to.Ascii(separator == '[' ? "[]}" : "]}");
        return to.ToArray();
    }

    public static ImmutableArray<SuggestionFeedback> Read(ReadOnlyMemory<byte> json)
    {
        using var document = JsonDocument.Parse(json);
        return [.. document.RootElement.GetProperty("suggestions").EnumerateArray().Select(Read)];
    }

    private static void Write(CanonicalBuffer to, SuggestionFeedback suggestion)
    {
        var separator = (byte)'{';
        if (suggestion.Reason is { } reason)
        {
            to.Member(ref separator, "reason");
            to.Text(reason);
        }
        to.Member(ref separator, "rules");
        to.Texts(suggestion.Rules.AsSpan());
        to.Member(ref separator, "suggestion");
        to.Text(suggestion.Suggestion);
        to.Member(ref separator, "verdict");
        to.Text(suggestion.IsAccepted ? "accepted" : "overridden");
        to.Raw((byte)'}');
    }

    private static SuggestionFeedback Read(JsonElement suggestion) => new(
        suggestion.GetProperty("suggestion").GetString()!,
        [.. suggestion.GetProperty("rules").EnumerateArray().Select(r => r.GetString()!)],
        suggestion.GetProperty("verdict").GetString() == "accepted",
        suggestion.TryGetProperty("reason", out var reason) ? reason.GetString() : null);
}
