using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace FindingRules.Service.Problems;

/// <summary>How the service writes JSON: rules and messages stay readable, what is not there is not named.</summary>
internal static class ServiceJson
{
    public static JsonSerializerOptions Options { get; } = Configure(new JsonSerializerOptions(JsonSerializerDefaults.Web));

    public static JsonSerializerOptions Configure(JsonSerializerOptions options)
    {
        // Answers are never put into a page as they are, and say so with their content type and nosniff.
        options.Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;
        options.DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull;
        options.Converters.Add(new MessageConverter());
        return options;
    }
}
