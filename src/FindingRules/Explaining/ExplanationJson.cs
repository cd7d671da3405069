using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using FindingRules.Model.Explanations;

namespace FindingRules.Explaining;

/// <summary>
/// An explanation as JSON, in the form of <c>schemas/trace.schema.json</c>: members in camel case, lists always there,
/// what has no value left out. The same explanation is the same bytes.
/// </summary>
public static class ExplanationJson
{
    private static readonly JsonSerializerOptions Compact = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        // Keys are worked out from members that are written already.
        IgnoreReadOnlyProperties = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
        NewLine = "\n",
    };

    private static readonly JsonSerializerOptions Pretty = new(Compact) { WriteIndented = true };

    public static ReadOnlyMemory<byte> ToBytes(Explanation explanation, bool isPretty = false) =>
        JsonSerializer.SerializeToUtf8Bytes(explanation, isPretty ? Pretty : Compact);
}
