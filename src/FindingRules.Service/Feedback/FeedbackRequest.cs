using System.Text.Json;
using System.Text.Json.Serialization;

namespace FindingRules.Service.Feedback;

/// <summary>What became of suggestions of a reading.</summary>
internal sealed record FeedbackRequest(IReadOnlyList<SuggestionVerdict> Suggestions)
{
    private static readonly JsonSerializerOptions Strict = new(JsonSerializerDefaults.Web)
    {
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
        PropertyNameCaseInsensitive = false,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        NumberHandling = JsonNumberHandling.Strict,
    };

    /// <summary>Null where the body is not in this form.</summary>
    public static FeedbackRequest? Read(string json)
    {
        try
        {
            var read = JsonSerializer.Deserialize<FeedbackRequest>(json, Strict);
            return read?.Suggestions.All(s => s is not null && s.IsWhole) == true ? read : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

/// <summary>One suggestion, named by topic and subject, or by the next step, or by the caution.</summary>
/// <param name="Verdict"><c>accepted</c> or <c>overridden</c>.</param>
/// <param name="Reason">Of an overridden one, a code from the pack's list.</param>
internal sealed record SuggestionVerdict(
    string Verdict, string? Topic = null, string? Subject = null, string? Step = null, string? Caution = null, string? Reason = null)
{
    [JsonIgnore]
    public bool IsWhole => Verdict is "accepted" or "overridden"
        && (Topic is null) == (Subject is null)
        && new[] { Topic, Step, Caution }.Count(n => n is not null) == 1;

    [JsonIgnore]
    public string Name => Topic is not null ? SuggestionNames.OfTopic(Topic, Subject!)
        : Step is not null ? SuggestionNames.OfStep(Step)
        : SuggestionNames.OfCaution(Caution!);
}
