using System.Text;
using System.Text.Json;
using FindingRules.Model.Text;

namespace FindingRules.Service.Readings;

/// <summary>
/// A first look at a study: whether it is JSON at all, and which pack it asks for. A pack must be chosen before the
/// study can be read against its vocabulary.
/// </summary>
/// <param name="Pack">The pack it names; null where it names none, or something that is not text.</param>
/// <param name="PackAt">Where it names it.</param>
internal sealed record StudyPeek(bool IsJson, string? Pack, Location? PackAt)
{
    private static readonly JsonReaderOptions AnyDepth = new() { MaxDepth = int.MaxValue };

    public static StudyPeek At(SourceText study)
    {
        var utf8 = study.Utf8;
        var reader = new Utf8JsonReader(utf8, AnyDepth);
        (string Name, TextSpan Span)? pack = null;
        try
        {
            while (reader.Read())
            {
                if (pack is not null || reader.CurrentDepth != 1 || reader.TokenType != JsonTokenType.PropertyName) continue;
                if (!reader.ValueTextEquals("pack"u8)) continue;
                reader.Read();
                if (reader.TokenType == JsonTokenType.String) pack = (reader.GetString()!, SpanOf(ref reader, utf8));
            }
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return new StudyPeek(false, null, null);
        }
        return pack is { } found
            ? new StudyPeek(true, found.Name, new Location(study, found.Span, "/pack"))
            : new StudyPeek(true, null, null);
    }

    private static TextSpan SpanOf(ref Utf8JsonReader reader, byte[] utf8)
    {
        var start = Encoding.UTF8.GetCharCount(utf8, 0, (int)reader.TokenStartIndex);
        return TextSpan.Between(start, Encoding.UTF8.GetCharCount(utf8, 0, (int)reader.BytesConsumed));
    }
}
