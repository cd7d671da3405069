using System.Text.Json;
using System.Text.Json.Serialization;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Rendering;

namespace FindingRules.Service.Problems;

/// <summary>Messages leave the service in the form that the command line writes.</summary>
internal sealed class MessageConverter : JsonConverter<Message>
{
    public override Message Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new JsonException("Messages are written, never read.");

    public override void Write(Utf8JsonWriter writer, Message value, JsonSerializerOptions options) =>
        MessageJson.Write(writer, value);
}
